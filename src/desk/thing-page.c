/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "thing-page.h"

#include <glib/gi18n-lib.h>

#include "card.h"
#include "columns.h"
#include "facts.h"
#include "job-link.h"
#include "link-row.h"
#include "thing-file.h"
#include "title-block.h"

struct _UnsootThingPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  UnsootCard *facts;
  UnsootCard *jobs;
};

G_DEFINE_FINAL_TYPE (UnsootThingPage, unsoot_thing_page, UNSOOT_TYPE_VIEW)

static gpointer
read_thing (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_thing_file_load (db, query->slug, query->record, query->now, error);
}

static void
show_facts (UnsootThingPage *self, const UnsootThingFile *file)
{
  GtkWidget *facts = unsoot_facts_new ();

  unsoot_card_clear (self->facts);
  for (guint i = 0; i < file->facts->len; i++)
    {
      const UnsootThingFact *fact = g_ptr_array_index (file->facts, i);
      GtkWidget *value = unsoot_facts_add (UNSOOT_FACTS (facts), fact->what, fact->value);
      if (fact->warns)
        gtk_widget_add_css_class (value, "warning");
    }
  gtk_box_append (GTK_BOX (self->facts), facts);
}

static void
show_jobs (UnsootThingPage *self, const UnsootThingFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_link_list_new (_ ("Jobs"));

  unsoot_card_clear (self->jobs);
  gtk_widget_set_visible (GTK_WIDGET (self->jobs), file->jobs != NULL);
  for (guint i = 0; file->jobs != NULL && i < file->jobs->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_job_link_new (g_ptr_array_index (file->jobs, i), session, TRUE));
  gtk_box_append (GTK_BOX (self->jobs), list);
}

static void
show_thing (UnsootView *view, gpointer result)
{
  UnsootThingPage *self = UNSOOT_THING_PAGE (view);
  g_autoptr (UnsootThingFile) file = result;

  unsoot_view_set_title (view, file->title);
  unsoot_title_block_show (self->head, file->title, file->subtitle);
  show_facts (self, file);
  show_jobs (self, file);
}

static void
unsoot_thing_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_thing_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_THING_PAGE);
}

static void
unsoot_thing_page_class_init (UnsootThingPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_thing_page_dispose;
  view_class->read = read_thing;
  view_class->free_result = (GDestroyNotify) unsoot_thing_file_free;
  view_class->show = show_thing;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/thing-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootThingPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootThingPage, facts);
  gtk_widget_class_bind_template_child (widget_class, UnsootThingPage, jobs);
}

static void
unsoot_thing_page_init (UnsootThingPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
