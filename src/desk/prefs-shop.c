/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "prefs-edit.h"
#include "prefs-limits.h"
#include "shops.h"

/* The shop's own row has more members than one form should have: it is changed in parts. */

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_shop_save (db, who, record, error);
}

static void
put (char **member, const UnsootDeedOrder *order, gsize field)
{
  g_free (*member);
  *member = g_strdup (unsoot_deed_text (order, field));
}

static char *
or_empty (const char *text)
{
  return g_strdup (text != NULL ? text : "");
}

/* Name and address. */

enum
{
  NAME,
  STREET,
  TOWN,
  REGION,
  POSTCODE,
  PHONE,
  EMAIL,
  N_ADDRESS
};

static const UnsootPrefsEdit address_edit;

static gboolean
carry_out_address (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &address_edit, error);
}

static const UnsootDeedForm address_form = {
  .slug = "shop-address",
  .title = N_ ("Name and address"),
  .verb = N_ ("Save"),
  .done = N_ ("The shop is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_ADDRESS,
  .fields = {
    [NAME] = { .label = N_ ("Name, as on paper") },
    [STREET] = { .label = N_ ("Street"), .optional = TRUE },
    [TOWN] = { .label = N_ ("Town"), .optional = TRUE },
    [REGION] = { .label = N_ ("State or province"), .optional = TRUE },
    [POSTCODE] = { .label = N_ ("Postcode"), .optional = TRUE },
    [PHONE] = { .label = N_ ("Phone"), .optional = TRUE },
    [EMAIL] = { .label = N_ ("Email"), .optional = TRUE },
  },
  .carry_out = carry_out_address,
};

static char **
address_member (UnsootShopRow *shop, gsize field)
{
  char **const members[N_ADDRESS] = { &shop->name,     &shop->street, &shop->town, &shop->region,
                                      &shop->postcode, &shop->phone,  &shop->email };

  return members[field];
}

static char *
address_text (gconstpointer record, gsize field, const char *currency)
{
  return or_empty (*address_member ((UnsootShopRow *) record, field));
}

static gboolean
apply_address (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  for (gsize i = 0; i < N_ADDRESS; i++)
    put (address_member (record, i), order, i);
  return TRUE;
}

static const UnsootPrefsEdit address_edit
    = { &address_form, &unsoot_shop_row_type, address_text, apply_address, save };

/* Money, sheet and clock. */

enum
{
  TAX_NUMBER,
  CURRENCY,
  SHEET,
  ZONE,
  N_MONEY
};

static const UnsootPrefsEdit money_edit;

static gboolean
carry_out_money (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &money_edit, error);
}

static const char *const sheets[] = { "letter", "a4" };
static const char *const sheet_words[] = { N_ ("Letter"), N_ ("A4"), NULL };

static const UnsootDeedForm money_form = {
  .slug = "shop-money",
  .title = N_ ("Money, paper and clock"),
  .verb = N_ ("Save"),
  .done = N_ ("The shop is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_MONEY,
  .fields = {
    [TAX_NUMBER] = { .label = N_ ("Tax number"), .optional = TRUE },
    [CURRENCY] = { .label = N_ ("Currency"), .hint = N_ ("Three letters of ISO 4217: USD, EUR") },
    [SHEET] = { .label = N_ ("Sheet"), .kind = UNSOOT_ASK_CHOICE, .words = sheet_words },
    [ZONE] = { .label = N_ ("Time zone"), .optional = TRUE,
               .hint = N_ ("As America/Denver; empty: this computer’s") },
  },
  .carry_out = carry_out_money,
};

static char *
money_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootShopRow *shop = record;

  switch (field)
    {
    case TAX_NUMBER:
      return or_empty (shop->tax_number);
    case CURRENCY:
      return or_empty (shop->currency);
    case SHEET:
      return g_strdup (g_strcmp0 (shop->paper, "a4") == 0 ? "1" : "0");
    default:
      return or_empty (shop->timezone);
    }
}

static gboolean
apply_money (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootShopRow *shop = record;

  put (&shop->tax_number, order, TAX_NUMBER);
  g_free (shop->currency);
  shop->currency = g_ascii_strup (order->values[CURRENCY].text, -1);
  g_free (shop->paper);
  shop->paper = g_strdup (sheets[order->values[SHEET].number]);
  put (&shop->timezone, order, ZONE);
  return TRUE;
}

static const UnsootPrefsEdit money_edit
    = { &money_form, &unsoot_shop_row_type, money_text, apply_money, save };

/* What is printed under the papers. */

enum
{
  PAYMENT_NOTE,
  REPORT_NOTE,
  N_NOTES
};

static const UnsootPrefsEdit notes_edit;

static gboolean
carry_out_notes (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &notes_edit, error);
}

static const UnsootDeedForm notes_form = {
  .slug = "shop-notes",
  .title = N_ ("Notes on papers"),
  .verb = N_ ("Save"),
  .done = N_ ("The notes are saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_NOTES,
  .fields = {
    [PAYMENT_NOTE] = { .label = N_ ("How to pay, on the invoice"), .optional = TRUE },
    [REPORT_NOTE] = { .label = N_ ("Under the customer’s report"), .optional = TRUE },
  },
  .carry_out = carry_out_notes,
};

static char *
notes_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootShopRow *shop = record;

  return or_empty (field == PAYMENT_NOTE ? shop->payment_note : shop->soot_note);
}

static gboolean
apply_notes (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootShopRow *shop = record;

  put (&shop->payment_note, order, PAYMENT_NOTE);
  put (&shop->soot_note, order, REPORT_NOTE);
  return TRUE;
}

static const UnsootPrefsEdit notes_edit
    = { &notes_form, &unsoot_shop_row_type, notes_text, apply_notes, save };

static void
add (GtkWidget *list, UnsootSession *session, const UnsootPrefsEdit *edit, const char *detail,
     const UnsootShopRow *shop)
{
  gtk_list_box_append (
      GTK_LIST_BOX (list),
      unsoot_prefs_row_new (session, edit, _ (edit->form->title), detail, NULL, shop));
}

void
unsoot_prefs_card_shop (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  const UnsootShopRow *shop = file->shop;
  GtkWidget *list = unsoot_prefs_list_new (_ ("The shop"));
  g_autofree char *address
      = g_strdup_printf ("%s · %s", shop->name, shop->town != NULL ? shop->town : "–");
  g_autofree char *money = g_strdup_printf (
      "%s · %s · %s", shop->currency, g_strcmp0 (shop->paper, "a4") == 0 ? _ ("A4") : _ ("Letter"),
      shop->timezone != NULL ? shop->timezone : _ ("this computer’s clock"));
  g_autofree char *estimates = unsoot_prefs_estimates_words (shop, session);
  g_autofree char *next = unsoot_prefs_next_words (shop);

  add (list, session, &address_edit, address, shop);
  add (list, session, &money_edit, money, shop);
  add (list, session, &unsoot_prefs_estimates, estimates, shop);
  add (list, session, &unsoot_prefs_next, next, shop);
  add (list, session, &notes_edit,
       shop->payment_note != NULL ? shop->payment_note : _ ("nothing about payment yet"), shop);
  gtk_box_append (GTK_BOX (card), list);
}
