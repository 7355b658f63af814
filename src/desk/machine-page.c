/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-page.h"

#include <glib/gi18n-lib.h>

#include "card.h"
#include "columns.h"
#include "deed-button.h"
#include "format.h"
#include "fluid-words.h"
#include "machine-deeds.h"
#include "machine-file.h"
#include "rig.h"
#include "side-mark.h"
#include "slug.h"
#include "table.h"
#include "tank-picture.h"
#include "title-block.h"
#include "unit.h"

enum
{
  EVENTS_SHOWN = 15,
  CHECKS_SHOWN = 10
};

struct _UnsootMachinePage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *deeds;
  GtkLabel *trouble;
  UnsootCard *fuel;
  UnsootCard *intake;
  UnsootCard *gauges;
  UnsootCard *events;

  UnsootMachineFile *file; /* owned; NULL until there is data */
};

G_DEFINE_FINAL_TYPE (UnsootMachinePage, unsoot_machine_page, UNSOOT_TYPE_VIEW)

static gpointer
read_machine (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_machine_file_load (db, MAX (((const UnsootViewQuery *) data)->record, 1), error);
}

static void
tank_cb (GtkWidget *button, UnsootMachinePage *self)
{
  const guint at = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "tank"));
  const UnsootTankDeed deed = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "tank-deed"));

  unsoot_tank_deed_open (deed, GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                         self->file->machine, g_ptr_array_index (self->file->tanks, at));
}

static GtkWidget *
tank_buttons_new (UnsootMachinePage *self, guint at)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootTankState *state = g_ptr_array_index (self->file->tanks, at);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  UnsootSide side = UNSOOT_SIDE_NONE;

  gtk_widget_add_css_class (box, "card-deeds");
  unsoot_side_from_slug (state->tank->side, &side);
  for (guint i = 0; i < UNSOOT_TANK_DEEDS; i++)
    {
      GtkWidget *button
          = unsoot_tank_deed_button_new ((UnsootTankDeed) i, session, unsoot_side_label (side));
      g_object_set_data (G_OBJECT (button), "tank", GUINT_TO_POINTER (at));
      g_object_set_data (G_OBJECT (button), "tank-deed", GUINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (tank_cb), self);
      gtk_box_append (GTK_BOX (box), button);
    }
  return box;
}

static void
show_tank (UnsootMachinePage *self, UnsootCard *card, guint at)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootTankState *state = g_ptr_array_index (self->file->tanks, at);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6),
            *label = gtk_label_new (state->words);
  g_autofree char *capacity = unsoot_format_litres (state->tank->capacity_ml);
  g_autofree char *low = unsoot_format_litres (state->tank->low_ml);
  /* Translators: what a tank holds at most, and what its low-level switch leaves */
  g_autofree char *size = g_strdup_printf (_ ("holds %s, low at %s"), capacity, low);
  GtkWidget *detail = gtk_label_new (size);

  unsoot_card_clear (card);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "text-body");
  gtk_widget_add_css_class (label, "figures");
  gtk_box_append (GTK_BOX (words), label);
  gtk_label_set_xalign (GTK_LABEL (detail), 0);
  gtk_widget_add_css_class (detail, "dim-label");
  gtk_widget_add_css_class (detail, "figures");
  gtk_box_append (GTK_BOX (words), detail);
  if (state->last != NULL)
    {
      g_autofree char *since = unsoot_format_moment (state->last->at, unsoot_session_now (session),
                                                     unsoot_session_zone (session));
      /* Translators: a moment */
      g_autofree char *text = g_strdup_printf (_ ("as of %s"), since);
      GtkWidget *as_of = gtk_label_new (text);
      gtk_label_set_xalign (GTK_LABEL (as_of), 0);
      gtk_widget_add_css_class (as_of, "dim-label");
      gtk_widget_add_css_class (as_of, "figures");
      gtk_box_append (GTK_BOX (words), as_of);
    }
  gtk_box_append (GTK_BOX (box), unsoot_tank_picture_new (state));
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (card), box);
  gtk_box_append (GTK_BOX (card), tank_buttons_new (self, at));
}

static const char *
event_words (const char *kind)
{
  static const UnsootSlug kinds[] = {
    { 0, "found", N_ ("Found") },
    { 1, "fill", N_ ("Filled") },
    { 2, "drain", N_ ("Drained") },
    { 3, "flush", N_ ("Flushed") },
    { 4, "hold", N_ ("Kept") },
    { 5, "run", N_ ("Used in a run") },
    { 6, "correction", N_ ("Corrected") },
    { 0, NULL, NULL },
  };
  int value;

  return unsoot_slug_find (kinds, kind, &value) ? unsoot_slug_words (kinds, value) : kind;
}

static const char *
side_of_event (UnsootMachinePage *self, const UnsootTankEventRow *event)
{
  for (guint i = 0; i < self->file->tanks->len; i++)
    {
      const UnsootTankState *state = g_ptr_array_index (self->file->tanks, i);
      UnsootSide side = UNSOOT_SIDE_NONE;

      if (state->tank->id == event->tank_id && unsoot_side_from_slug (state->tank->side, &side))
        return unsoot_side_label (side);
    }
  return "";
}

/* What a button that takes an event back has to know. */
typedef struct
{
  UnsootSession *session;
  gint64 event_id;
  char *what;
} Back;

static void
back_free (gpointer data, GClosure *closure)
{
  Back *back = data;

  g_object_unref (back->session);
  g_free (back->what);
  g_free (back);
}

static void
back_cb (GtkWidget *button, Back *back)
{
  unsoot_tank_correct_open (button, back->session, back->event_id, back->what);
}

static GtkWidget *
back_button_new (UnsootMachinePage *self, const UnsootTankEventRow *event)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  /* Translators: what was done, and with which side's tank */
  g_autofree char *what
      = g_strdup_printf (_ ("%s: %s"), event_words (event->kind), side_of_event (self, event));
  GtkWidget *button
      = unsoot_deed_button_new (session, UNSOOT_DEED_TEND_TANK, _ ("Take back"), what);
  Back *back = g_new0 (Back, 1);

  back->session = g_object_ref (session);
  back->event_id = event->id;
  back->what = g_steal_pointer (&what);
  unsoot_deed_button_draw (button, "edit-undo-symbolic", _ ("Take back"));
  gtk_widget_add_css_class (button, "small");
  g_signal_connect_data (button, "clicked", G_CALLBACK (back_cb), back, back_free, 0);
  return button;
}

static gboolean
may_be_taken_back (UnsootMachinePage *self, const UnsootTankEventRow *event)
{
  for (guint i = 0; i < self->file->standing->len; i++)
    if (g_array_index (self->file->standing, gint64, i) == event->id)
      return TRUE;
  return FALSE;
}

static gboolean
is_taken_back (UnsootMachinePage *self, const UnsootTankEventRow *event)
{
  for (guint i = 0; i < self->file->events->len; i++)
    if (((UnsootTankEventRow *) g_ptr_array_index (self->file->events, i))->reverses_id
        == event->id)
      return TRUE;
  return FALSE;
}

/* "Drained · empty · taken back"; the label or the reason below. */
static char *
what_markup (UnsootMachinePage *self, const UnsootTankEventRow *event)
{
  UnsootContents contents = UNSOOT_CONTENTS_UNKNOWN;
  const char *below = event->reason != NULL ? event->reason : event->label;
  g_autofree char *head = NULL, *detail = NULL;

  unsoot_contents_from_slug (event->contents, &contents);
  head = g_markup_printf_escaped ("%s · %s%s%s", event_words (event->kind),
                                  unsoot_contents_label (contents),
                                  is_taken_back (self, event) ? " · " : "",
                                  is_taken_back (self, event) ? _ ("taken back") : "");
  if (below == NULL)
    return g_steal_pointer (&head);
  detail = g_markup_escape_text (below, -1);
  return g_strdup_printf ("%s\n<span size=\"small\" alpha=\"72%%\">%s</span>", head, detail);
}

static void
add_event (UnsootMachinePage *self, UnsootTable *table, const UnsootTankEventRow *event)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *when = unsoot_format_stamp (event->at, unsoot_session_now (session),
                                               unsoot_session_zone (session));
  g_autofree char *ml = unsoot_volume_markup (event->ml);
  g_autofree char *what = what_markup (self, event);
  const char *const cells[] = { when, side_of_event (self, event), what, ml, NULL };
  const int row = unsoot_table_add (table, cells);

  if (may_be_taken_back (self, event))
    unsoot_table_put (table, row, 4, back_button_new (self, event));
}

static void
show_events (UnsootMachinePage *self, GPtrArray *events)
{
  const UnsootTableColumn columns[]
      = { { _ ("When"), FALSE, FALSE }, { _ ("Tank"), FALSE, FALSE },
          { _ ("What"), FALSE, TRUE },  { _ ("Then in it"), TRUE, FALSE },
          { "", FALSE, FALSE },         { NULL, FALSE, FALSE } };
  GtkWidget *table;

  unsoot_card_clear (self->events);
  if (events->len == 0)
    {
      unsoot_card_say (self->events, _ ("Nothing was recorded of its tanks yet."));
      return;
    }
  table = unsoot_table_new (_ ("What was done with the tanks"), columns);
  for (guint i = 0; i < events->len && i < EVENTS_SHOWN; i++)
    add_event (self, UNSOOT_TABLE (table), g_ptr_array_index (events, i));
  gtk_box_append (GTK_BOX (self->events), table);
}

/* "7.9 / 8 psi": what it read, and the reference beside it. */
static char *
readings_markup (const UnsootGaugeCheckRow *check)
{
  g_autofree char *reads
      = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, check->reads_pa), 1);
  g_autofree char *reference
      = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, check->reference_pa), 1);
  g_autofree char *both = g_strdup_printf ("%s / %s", reads, reference);

  return unsoot_format_with_unit (both, unsoot_unit_symbol (UNSOOT_UNIT_PSI));
}

static void
add_check (UnsootMachinePage *self, UnsootTable *table, const UnsootGaugeCheckRow *check)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *when = unsoot_format_stamp (check->at, unsoot_session_now (session),
                                               unsoot_session_zone (session));
  g_autofree char *gauge
      = g_markup_printf_escaped ("%s\n<span size=\"small\" alpha=\"72%%\">%s</span>", check->gauge,
                                 check->passed ? _ ("passed") : _ ("did not pass"));
  g_autofree char *readings = readings_markup (check);
  g_autofree char *next = unsoot_format_day (check->next_on, today);
  const char *const cells[] = { when, gauge, readings, next };

  unsoot_table_add (table, cells);
}

static void
show_gauges (UnsootMachinePage *self, GPtrArray *checks)
{
  const UnsootTableColumn columns[] = { { _ ("When"), FALSE, FALSE },
                                        { _ ("Gauge"), FALSE, TRUE },
                                        { _ ("Reads / reference"), TRUE, FALSE },
                                        { _ ("Next"), FALSE, FALSE },
                                        { NULL, FALSE, FALSE } };
  GtkWidget *table;

  unsoot_card_clear (self->gauges);
  if (checks->len == 0)
    {
      unsoot_card_say (self->gauges, _ ("No gauge was checked yet."));
      return;
    }
  table = unsoot_table_new (_ ("Gauge checks"), columns);
  for (guint i = 0; i < checks->len && i < CHECKS_SHOWN; i++)
    add_check (self, UNSOOT_TABLE (table), g_ptr_array_index (checks, i));
  gtk_box_append (GTK_BOX (self->gauges), table);
}

static void
gauge_cb (GtkWidget *button, UnsootMachinePage *self)
{
  const UnsootGaugeCheckRow *next
      = self->file->gauges->len > 0 ? g_ptr_array_index (self->file->gauges, 0) : NULL;

  unsoot_gauge_check_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                           self->file->machine, next != NULL ? next->gauge : NULL);
}

static void
hoses_cb (GtkWidget *button, UnsootMachinePage *self)
{
  unsoot_hoses_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                     self->file->machine);
}

/* What is due is the next deed, and only one of the two. */
static void
show_deeds (UnsootMachinePage *self, gboolean gauges_due, gboolean hoses_due)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *gauge
      = unsoot_deed_button_new (session, UNSOOT_DEED_CHECK_MACHINE, _ ("Check a gauge…"), NULL);
  GtkWidget *hoses
      = unsoot_deed_button_new (session, UNSOOT_DEED_CHECK_MACHINE, _ ("Hoses replaced…"), NULL);
  GtkWidget *former;

  while ((former = gtk_widget_get_first_child (GTK_WIDGET (self->deeds))) != NULL)
    gtk_box_remove (self->deeds, former);
  g_signal_connect (gauge, "clicked", G_CALLBACK (gauge_cb), self);
  g_signal_connect (hoses, "clicked", G_CALLBACK (hoses_cb), self);
  unsoot_deed_button_suggest (gauge, gauges_due);
  unsoot_deed_button_suggest (hoses, hoses_due && !gauges_due);
  gtk_box_append (self->deeds, gauge);
  gtk_box_append (self->deeds, hoses);
}

/* Both with a dot between, or the one that there is; NULL where there is neither. */
static char *
join (const char *first, const char *second)
{
  if (first != NULL && second != NULL)
    return g_strdup_printf ("%s · %s", first, second);
  return g_strdup (first != NULL ? first : second);
}

static void
show_due (UnsootMachinePage *self)
{
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  gboolean hoses_late, gauges_late;
  g_autofree char *hoses = unsoot_machine_hoses_words (self->file, today, &hoses_late);
  g_autofree char *gauges = unsoot_machine_gauge_words (self->file, today, &gauges_late);
  g_autofree char *late = join (hoses_late ? hoses : NULL, gauges_late ? gauges : NULL);
  g_autofree char *in_time = join (hoses_late ? NULL : hoses, gauges_late ? NULL : gauges);
  g_autofree char *subtitle = join (self->file->machine->serial, in_time);

  unsoot_title_block_show (self->head, self->file->machine->name, subtitle);
  gtk_label_set_text (self->trouble, late != NULL ? late : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), late != NULL);
  show_deeds (self, unsoot_machine_gauge_due (self->file, today),
              unsoot_machine_hoses_due (self->file, today));
}

static void
show_machine (UnsootView *view, gpointer result)
{
  UnsootMachinePage *self = UNSOOT_MACHINE_PAGE (view);

  g_clear_pointer (&self->file, unsoot_machine_file_free);
  self->file = result;
  unsoot_view_set_title (view, self->file->machine->name);
  show_due (self);
  for (guint i = 0; i < self->file->tanks->len; i++)
    {
      const UnsootTankState *state = g_ptr_array_index (self->file->tanks, i);
      show_tank (self, g_str_equal (state->tank->side, "fuel") ? self->fuel : self->intake, i);
    }
  show_gauges (self, self->file->checks);
  show_events (self, self->file->events);
}

static void
unsoot_machine_page_dispose (GObject *object)
{
  g_clear_pointer (&UNSOOT_MACHINE_PAGE (object)->file, unsoot_machine_file_free);
  G_OBJECT_CLASS (unsoot_machine_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_MACHINE_PAGE);
}

static void
unsoot_machine_page_class_init (UnsootMachinePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_machine_page_dispose;
  view_class->read = read_machine;
  view_class->free_result = (GDestroyNotify) unsoot_machine_file_free;
  view_class->show = show_machine;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/machine-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, deeds);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, fuel);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, intake);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, gauges);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinePage, events);
}

static void
unsoot_machine_page_init (UnsootMachinePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
