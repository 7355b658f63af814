/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "money.h"
#include "prefs-edit.h"
#include "services.h"
#include "side-mark.h"

enum
{
  NAME,
  SIDES,
  PRICE,
  MINUTES,
  DISPOSAL,
  ACTIVE,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const char *const sides[] = { "fuel", "intake", "both" };
static const char *const sides_words[]
    = { N_ ("Fuel side"), N_ ("Intake side"), N_ ("Both sides"), NULL };
static const char *const active_words[] = { N_ ("Sold"), N_ ("No longer sold"), NULL };

static const UnsootDeedForm form = {
  .slug = "service",
  .title = N_ ("Service"),
  .verb = N_ ("Save"),
  .done = N_ ("The service is saved"),
  .deed = UNSOOT_DEED_EDIT_PRICES,
  .n_fields = N_FIELDS,
  .fields = {
    [NAME] = { .label = N_ ("Name") },
    [SIDES] = { .label = N_ ("What is cleaned"), .kind = UNSOOT_ASK_CHOICE, .words = sides_words },
    [PRICE] = { .label = N_ ("Labour"), .kind = UNSOOT_ASK_MONEY,
                .hint = N_ ("Without tax; fluids and gaskets come on top") },
    [MINUTES] = { .label = N_ ("Planned minutes"), .kind = UNSOOT_ASK_COUNT },
    [DISPOSAL] = { .label = N_ ("Disposal of used fluid"), .kind = UNSOOT_ASK_MONEY,
                   .optional = TRUE },
    [ACTIVE] = { .label = N_ ("Stands"), .kind = UNSOOT_ASK_CHOICE, .words = active_words },
  },
  .carry_out = carry_out,
};

static int
sides_number (const char *slug)
{
  for (int i = 0; i < (int) G_N_ELEMENTS (sides); i++)
    if (g_strcmp0 (sides[i], slug) == 0)
      return i;
  return 0;
}

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootServiceRow *service = record;

  switch (field)
    {
    case NAME:
      return g_strdup (service->name);
    case SIDES:
      return g_strdup_printf ("%d", sides_number (service->sides));
    case PRICE:
      return unsoot_money_plain (service->price_minor, currency);
    case MINUTES:
      return g_strdup_printf ("%d", (int) service->planned_minutes);
    case DISPOSAL:
      return unsoot_money_plain (service->disposal_minor, currency);
    default:
      return g_strdup (service->active ? "0" : "1");
    }
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootServiceRow *service = record;

  g_free (service->name);
  service->name = g_strdup (unsoot_deed_text (order, NAME));
  g_free (service->sides);
  service->sides = g_strdup (sides[order->values[SIDES].number]);
  service->price_minor = order->values[PRICE].number;
  service->planned_minutes = order->values[MINUTES].number;
  service->disposal_minor = order->values[DISPOSAL].number;
  service->active = order->values[ACTIVE].number == 0;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_service_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_service_row_type, text, apply, save };

void
unsoot_prefs_card_services (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Services and prices"));

  for (guint i = 0; i < file->services->len; i++)
    {
      const UnsootServiceRow *service = g_ptr_array_index (file->services, i);
      g_autofree char *price = unsoot_session_money (session, service->price_minor);
      g_autofree char *time = unsoot_format_span (service->planned_minutes * 60);
      g_autofree char *detail
          = service->active ? g_strdup_printf ("%s · %s", unsoot_sides_words (service->sides), time)
                            : g_strdup (_ ("no longer sold"));
      gtk_list_box_append (GTK_LIST_BOX (list), unsoot_prefs_row_new (session, &edit, service->name,
                                                                      detail, price, service));
    }
  unsoot_prefs_list_show (list, card,
                          _ ("None yet. A service is what a customer asks for, with its price."));
  gtk_box_append (GTK_BOX (card),
                  unsoot_prefs_add_button_new (session, &edit, _ ("Add a service…")));
}
