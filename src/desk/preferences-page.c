/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences-page.h"

#include <glib/gi18n-lib.h>

#include "columns.h"
#include "days.h"
#include "prefs-cards.h"

struct _UnsootPreferencesPage
{
  UnsootView parent_instance;

  /* template */
  UnsootCard *shop;
  UnsootCard *services;
  UnsootCard *staff;
  UnsootCard *hours;
  UnsootCard *doses;
  UnsootCard *taxes;
  UnsootCard *holidays;
  UnsootCard *bays;
  UnsootCard *machines;
  UnsootCard *fluids;
  UnsootCard *families;

  gboolean was_here; /* what it was opened for has been shown */
};

G_DEFINE_FINAL_TYPE (UnsootPreferencesPage, unsoot_preferences_page, UNSOOT_TYPE_VIEW)

static gpointer
read_preferences (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_prefs_file_load (db, error);
}

/* The card that a line of Today is about. */
static GtkWidget *
card_of (UnsootPreferencesPage *self, gint64 part)
{
  switch ((UnsootSetup) part)
    {
    case UNSOOT_SETUP_HOURS:
      return GTK_WIDGET (self->hours);
    case UNSOOT_SETUP_BAYS:
      return GTK_WIDGET (self->bays);
    case UNSOOT_SETUP_STAFF:
      return GTK_WIDGET (self->staff);
    case UNSOOT_SETUP_TAXES:
      return GTK_WIDGET (self->taxes);
    case UNSOOT_SETUP_SERVICES:
      return GTK_WIDGET (self->services);
    case UNSOOT_SETUP_MACHINES:
      return GTK_WIDGET (self->machines);
    case UNSOOT_SETUP_FLUIDS:
      return GTK_WIDGET (self->fluids);
    case UNSOOT_SETUP_FAMILIES:
      return GTK_WIDGET (self->families);
    }
  return NULL;
}

/* The keyboard goes to its last button, which adds; the page scrolls along. */
static gboolean
go_to_card (gpointer data)
{
  UnsootPreferencesPage *self = UNSOOT_PREFERENCES_PAGE (data);
  GtkWidget *card = card_of (self, unsoot_view_get_record (UNSOOT_VIEW (self)));

  for (GtkWidget *child = card != NULL ? gtk_widget_get_last_child (card) : NULL; child != NULL;
       child = gtk_widget_get_prev_sibling (child))
    if (GTK_IS_BUTTON (child) && gtk_widget_grab_focus (child))
      break;
  return G_SOURCE_REMOVE;
}

static void
show_preferences (UnsootView *view, gpointer result)
{
  UnsootPreferencesPage *self = UNSOOT_PREFERENCES_PAGE (view);
  UnsootSession *session = unsoot_view_get_session (view);
  g_autoptr (UnsootPrefsFile) file = result;
  const struct
  {
    UnsootCard *card;
    void (*fill) (UnsootCard *, const UnsootPrefsFile *, UnsootSession *);
  } cards[] = {
    { self->shop, unsoot_prefs_card_shop },         { self->services, unsoot_prefs_card_services },
    { self->staff, unsoot_prefs_card_staff },       { self->hours, unsoot_prefs_card_hours },
    { self->doses, unsoot_prefs_card_doses },       { self->taxes, unsoot_prefs_card_taxes },
    { self->holidays, unsoot_prefs_card_holidays }, { self->bays, unsoot_prefs_card_bays },
    { self->machines, unsoot_prefs_card_machines }, { self->fluids, unsoot_prefs_card_fluids },
    { self->families, unsoot_prefs_card_families },
  };

  unsoot_view_set_title (view, _ ("Preferences"));
  /* The whole desk writes amounts and times as the shop has it now. */
  if (file->shop->version != unsoot_session_get_shop (session)->version)
    unsoot_session_set_shop (session, unsoot_record_copy (&unsoot_shop_row_type, file->shop));
  for (gsize i = 0; i < G_N_ELEMENTS (cards); i++)
    {
      unsoot_card_clear (cards[i].card);
      cards[i].fill (cards[i].card, file, session);
    }
  if (!self->was_here)
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, go_to_card, g_object_ref (self), g_object_unref);
  self->was_here = TRUE;
}

static void
unsoot_preferences_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_preferences_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PREFERENCES_PAGE);
}

static void
unsoot_preferences_page_class_init (UnsootPreferencesPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_preferences_page_dispose;
  view_class->read = read_preferences;
  view_class->free_result = (GDestroyNotify) unsoot_prefs_file_free;
  view_class->show = show_preferences;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/preferences-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, shop);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, services);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, staff);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, hours);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, doses);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, taxes);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, holidays);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, bays);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, machines);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, fluids);
  gtk_widget_class_bind_template_child (widget_class, UnsootPreferencesPage, families);
}

static void
unsoot_preferences_page_init (UnsootPreferencesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
