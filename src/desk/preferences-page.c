/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences-page.h"

#include <glib/gi18n-lib.h>

#include "columns.h"
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
};

G_DEFINE_FINAL_TYPE (UnsootPreferencesPage, unsoot_preferences_page, UNSOOT_TYPE_VIEW)

static gpointer
read_preferences (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_prefs_file_load (db, error);
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
}

static void
unsoot_preferences_page_init (UnsootPreferencesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
