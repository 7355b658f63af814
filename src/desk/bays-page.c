/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bays-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "bay-words.h"
#include "card.h"
#include "columns.h"
#include "days.h"
#include "format.h"
#include "path.h"
#include "side-mark.h"

struct _UnsootBaysPage
{
  UnsootView parent_instance;

  /* template */
  UnsootColumns *bays;
};

G_DEFINE_FINAL_TYPE (UnsootBaysPage, unsoot_bays_page, UNSOOT_TYPE_VIEW)

static gpointer
read_day (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_day_load (db, NULL, query->now, error);
}

static GtkWidget *
line_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
open_button_new (const UnsootDayBlock *block, const char *verb)
{
  GtkWidget *button = gtk_button_new_with_label (verb);
  g_autofree char *name = g_strdup_printf ("%s: %s", verb, block->title);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "deed");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", "bay", block->job_id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open");
  unsoot_access_name (button, name);
  return button;
}

static char *
state_words (const UnsootDayBlock *block)
{
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;

  unsoot_job_status_find (block->status, &status);
  if (status == UNSOOT_JOB_IN_BAY && block->halted)
    return g_strdup (_ ("stopped, waits for someone"));
  return g_strdup (unsoot_job_status_words (status));
}

static void
add_words (GtkBox *box, const UnsootDayBlock *block, GTimeZone *zone)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *state = state_words (block);
  g_autofree char *from = unsoot_format_clock (block->starts_at, zone);
  g_autofree char *to = unsoot_format_clock (block->ends_at, zone);
  g_autofree char *more
      = g_strdup_printf (_ ("Job %d, %s to %s, %s"), (int) block->job_number, from, to, state);

  gtk_box_append (GTK_BOX (head), line_new (block->title, "text-body"));
  unsoot_side_marks_append (GTK_BOX (head), block->sides);
  gtk_widget_add_css_class (head, "bay-visit");
  gtk_box_append (box, head);
  gtk_box_append (box, line_new (more, "subtitle-line"));
}

static GtkWidget *
progress_new (double progress)
{
  GtkWidget *bar = gtk_progress_bar_new ();
  g_autofree char *name
      = g_strdup_printf (_ ("%d %% of the steps are done"), (int) lround (100 * progress));

  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (bar), progress);
  gtk_widget_set_valign (bar, GTK_ALIGN_CENTER);
  unsoot_access_name (bar, name);
  return bar;
}

static void
add_block (UnsootCard *card, const UnsootDayBlock *block, const char *verb, GTimeZone *zone)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  const gboolean runs = !isnan (block->progress) && block->progress > 0;
  GtkWidget *left
      = runs ? progress_new (block->progress) : gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  add_words (GTK_BOX (words), block, zone);
  gtk_widget_set_hexpand (left, TRUE);
  gtk_box_append (GTK_BOX (foot), left);
  gtk_box_append (GTK_BOX (foot), open_button_new (block, verb));
  gtk_box_append (GTK_BOX (words), foot);
  gtk_box_append (GTK_BOX (card), words);
}

static void
show_bay (UnsootBaysPage *self, const UnsootDay *day, const UnsootBayRow *bay)
{
  GTimeZone *zone = unsoot_session_zone (unsoot_view_get_session (UNSOOT_VIEW (self)));
  UnsootCard *card = g_object_new (UNSOOT_TYPE_CARD, "title", bay->name, NULL);
  guint shown = 0;

  for (guint i = 0; i < day->blocks->len; i++)
    {
      const UnsootDayBlock *block = g_ptr_array_index (day->blocks, i);
      const char *verb = block->bay_id == bay->id ? unsoot_bay_way_in (block->status) : NULL;

      if (verb == NULL)
        continue;
      add_block (card, block, verb, zone);
      shown++;
    }
  if (shown == 0)
    unsoot_card_say (card, _ ("Free: nothing runs here, and nobody waits."));
  gtk_widget_set_parent (GTK_WIDGET (card), GTK_WIDGET (self->bays));
}

static void
show_day (UnsootView *view, gpointer result)
{
  UnsootBaysPage *self = UNSOOT_BAYS_PAGE (view);
  g_autoptr (UnsootDay) day = result;
  GtkWidget *card;

  while ((card = gtk_widget_get_first_child (GTK_WIDGET (self->bays))) != NULL)
    gtk_widget_unparent (card);
  for (guint i = 0; i < day->bays->len; i++)
    show_bay (self, day, g_ptr_array_index (day->bays, i));
}

static void
unsoot_bays_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bays_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAYS_PAGE);
}

static void
unsoot_bays_page_class_init (UnsootBaysPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bays_page_dispose;
  view_class->read = read_day;
  view_class->free_result = (GDestroyNotify) unsoot_day_free;
  view_class->show = show_day;
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/bays-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBaysPage, bays);
}

static void
unsoot_bays_page_init (UnsootBaysPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
