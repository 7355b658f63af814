/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "money.h"
#include "paper-size.h"
#include "prefs-edit.h"
#include "shops.h"
#include "unit-text.h"

#include <math.h>

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

/* Estimates. */

enum
{
  OVER_PERCENT,
  OVER_AMOUNT,
  VALID_DAYS,
  N_ESTIMATES
};

static const UnsootPrefsEdit estimates_edit;

static gboolean
carry_out_estimates (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &estimates_edit, error);
}

static const UnsootDeedForm estimates_form = {
  .slug = "shop-estimates",
  .title = N_ ("Limits of estimates"),
  .verb = N_ ("Save"),
  .done = N_ ("The limits are saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_ESTIMATES,
  .fields = {
    [OVER_PERCENT] = { .label = N_ ("Ask again beyond, in percent"), .optional = TRUE,
                       .hint = N_ ("Empty: any overrun asks. State law may set the limit.") },
    [OVER_AMOUNT] = { .label = N_ ("Or beyond this amount"), .kind = UNSOOT_ASK_MONEY,
                      .optional = TRUE, .hint = N_ ("Empty: no such limit") },
    [VALID_DAYS] = { .label = N_ ("Days an estimate holds"), .kind = UNSOOT_ASK_COUNT },
  },
  .carry_out = carry_out_estimates,
};

static char *
estimates_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootShopRow *shop = record;

  if (field == OVER_PERCENT)
    return isnan (shop->estimate_over_percent)
               ? g_strdup ("")
               : unsoot_format_number (shop->estimate_over_percent, 3);
  if (field == OVER_AMOUNT)
    return shop->estimate_over_minor != 0 ? unsoot_money_plain (shop->estimate_over_minor, currency)
                                          : g_strdup ("");
  return g_strdup_printf ("%d", (int) shop->estimate_valid_days);
}

static gboolean
apply_estimates (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootShopRow *shop = record;
  const char *percent = unsoot_deed_text (order, OVER_PERCENT);

  shop->estimate_over_percent = NAN;
  if (percent != NULL && !unsoot_number_parse (percent, &shop->estimate_over_percent, error))
    return FALSE;
  shop->estimate_over_minor = order->values[OVER_AMOUNT].number;
  shop->estimate_valid_days = order->values[VALID_DAYS].number;
  return TRUE;
}

static const UnsootPrefsEdit estimates_edit
    = { &estimates_form, &unsoot_shop_row_type, estimates_text, apply_estimates, save };

/* The next service. */

enum
{
  MONTHS,
  DISTANCE,
  HOURS,
  N_NEXT
};

static const UnsootPrefsEdit next_edit;

static gboolean
carry_out_next (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &next_edit, error);
}

static const UnsootDeedForm next_form = {
  .slug = "shop-next",
  .title = N_ ("The next service"),
  .verb = N_ ("Save"),
  .done = N_ ("The next service is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_NEXT,
  .fields = {
    [MONTHS] = { .label = N_ ("After months"), .kind = UNSOOT_ASK_COUNT,
                 .hint = N_ ("Whichever of the three comes first") },
    [DISTANCE] = { .label = N_ ("After distance"), .hint = N_ ("As 30000 mi or 48000 km") },
    [HOURS] = { .label = N_ ("After engine hours"), .kind = UNSOOT_ASK_COUNT },
  },
  .carry_out = carry_out_next,
};

static char *
next_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootShopRow *shop = record;

  if (field == MONTHS)
    return g_strdup_printf ("%d", (int) shop->next_due_months);
  if (field == HOURS)
    return g_strdup_printf ("%d", (int) (shop->next_due_seconds / 3600));
  return g_strdup_printf ("%.0f mi",
                          unsoot_unit_from_si (UNSOOT_UNIT_MI, (double) shop->next_due_metres));
}

static gboolean
apply_next (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootShopRow *shop = record;
  UnsootTyped distance;

  if (!unsoot_typed_parse (order->values[DISTANCE].text, UNSOOT_QUANTITY_DISTANCE, UNSOOT_UNIT_NONE,
                           &distance, error))
    return FALSE;
  shop->next_due_months = order->values[MONTHS].number;
  shop->next_due_metres = llround (distance.si);
  shop->next_due_seconds = order->values[HOURS].number * 3600;
  return TRUE;
}

static const UnsootPrefsEdit next_edit
    = { &next_form, &unsoot_shop_row_type, next_text, apply_next, save };

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

static char *
estimates_words (const UnsootShopRow *shop, UnsootSession *session)
{
  g_autofree char *percent = unsoot_format_number (shop->estimate_over_percent, 3);
  g_autofree char *amount = unsoot_session_money (session, shop->estimate_over_minor);
  const int days = (int) shop->estimate_valid_days;
  g_autofree char *holds
      = g_strdup_printf (ngettext ("hold %d day", "hold %d days", (gulong) days), days);

  if (isnan (shop->estimate_over_percent) && shop->estimate_over_minor == 0)
    return g_strdup_printf (_ ("any overrun asks again; %s"), holds);
  if (isnan (shop->estimate_over_percent))
    return g_strdup_printf (_ ("beyond %s over they ask again; %s"), amount, holds);
  if (shop->estimate_over_minor == 0)
    return g_strdup_printf (_ ("beyond %s %% over they ask again; %s"), percent, holds);
  return g_strdup_printf (_ ("beyond %s %% or %s over they ask again; %s"), percent, amount, holds);
}

static char *
next_words (const UnsootShopRow *shop)
{
  const int months = (int) shop->next_due_months, hours = (int) (shop->next_due_seconds / 3600);
  g_autofree char *distance = unsoot_format_number (
      unsoot_unit_from_si (UNSOOT_UNIT_MI, (double) shop->next_due_metres), 0);

  /* Translators: when the next service is due, whichever comes first */
  return g_strdup_printf (_ ("after %d months, %s mi or %d engine hours"), months, distance, hours);
}

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
  g_autofree char *estimates = estimates_words (shop, session);
  g_autofree char *next = next_words (shop);

  add (list, session, &address_edit, address, shop);
  add (list, session, &money_edit, money, shop);
  add (list, session, &estimates_edit, estimates, shop);
  add (list, session, &next_edit, next, shop);
  add (list, session, &notes_edit,
       shop->payment_note != NULL ? shop->payment_note : _ ("nothing about payment yet"), shop);
  gtk_box_append (GTK_BOX (card), list);
}
