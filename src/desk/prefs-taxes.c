/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "bill.h"
#include "format.h"
#include "prefs-edit.h"
#include "services.h"
#include "unit-text.h"

#include <math.h>

enum
{
  CATEGORY,
  RATE,
  LABEL,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

/* In the order of the choices. */
static const UnsootTaxCategory categories[]
    = { UNSOOT_TAX_STANDARD, UNSOOT_TAX_ZERO, UNSOOT_TAX_EXEMPT, UNSOOT_TAX_OUTSIDE };
static const char *const category_words[]
    = { N_ ("Taxed"), N_ ("At zero"), N_ ("Exempt"), N_ ("Not taxed"), NULL };

static const UnsootDeedForm form = {
  .slug = "tax-rule",
  .title = N_ ("Tax"),
  .verb = N_ ("Save"),
  .done = N_ ("The tax is saved"),
  .deed = UNSOOT_DEED_EDIT_PRICES,
  .n_fields = N_FIELDS,
  .fields = {
    [CATEGORY] = { .label = N_ ("How it is taxed"), .kind = UNSOOT_ASK_CHOICE,
                   .words = category_words },
    [RATE] = { .label = N_ ("Rate in percent"), .optional = TRUE,
               .hint = N_ ("As 7.25; empty where there is no tax") },
    [LABEL] = { .label = N_ ("As it is printed"),
                .hint = N_ ("The tax’s name; of what is exempt, why") },
  },
  .carry_out = carry_out,
};

static char *
rate_text (const UnsootTaxRuleRow *rule)
{
  return unsoot_format_number ((double) rule->rate_milli_percent / 1000.0, 3);
}

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootTaxRuleRow *rule = record;

  if (field == RATE)
    return rate_text (rule);
  if (field == LABEL)
    return g_strdup (rule->label != NULL ? rule->label : "");
  for (int i = 0; i < (int) G_N_ELEMENTS (categories); i++)
    if (rule->category != NULL && rule->category[0] == (char) categories[i])
      return g_strdup_printf ("%d", i);
  return g_strdup ("0");
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootTaxRuleRow *rule = record;
  const char *rate = unsoot_deed_text (order, RATE);
  double percent = 0;

  if (rate != NULL && !unsoot_number_parse (rate, &percent, error))
    return FALSE;
  rule->rate_milli_percent = llround (percent * 1000.0);
  g_free (rule->category);
  rule->category = g_strdup (
      unsoot_slug_of (unsoot_tax_categories, (int) categories[order->values[CATEGORY].number]));
  g_free (rule->label);
  rule->label = g_strdup (unsoot_deed_text (order, LABEL));
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_tax_rule_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_tax_rule_row_type, text, apply, save };

static gboolean
is_settled (GPtrArray *rules, const char *kind)
{
  for (guint i = 0; i < rules->len; i++)
    if (g_strcmp0 (((const UnsootTaxRuleRow *) g_ptr_array_index (rules, i))->line_kind, kind) == 0)
      return TRUE;
  return FALSE;
}

/* One rule for every kind of line that has none yet; they are changed one by one. */
static gboolean
settle (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  g_autoptr (GPtrArray) rules = deed != NULL ? unsoot_tax_rule_list (db, error) : NULL;

  if (rules == NULL)
    return FALSE;
  for (int kind = 0; kind < UNSOOT_BILL_KINDS; kind++)
    {
      const char *slug = unsoot_slug_of (unsoot_bill_kinds, kind);
      g_autoptr (UnsootTaxRuleRow) rule = unsoot_tax_rule_row_new ();

      if (is_settled (rules, slug))
        continue;
      rule->line_kind = g_strdup (slug);
      if (!apply (rule, order, error) || !save (db, who, rule, error))
        return FALSE;
    }
  return unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

static const UnsootDeedForm settle_form = {
  .slug = "tax-settle",
  .title = N_ ("Settle the tax"),
  .verb = N_ ("Settle"),
  .done = N_ ("The tax is settled"),
  .deed = UNSOOT_DEED_EDIT_PRICES,
  .n_fields = N_FIELDS,
  .fields = {
    [CATEGORY] = { .label = N_ ("How it is taxed"), .kind = UNSOOT_ASK_CHOICE,
                   .words = category_words },
    [RATE] = { .label = N_ ("Rate in percent"), .optional = TRUE,
               .hint = N_ ("As 7.25; empty where there is no tax") },
    [LABEL] = { .label = N_ ("As it is printed"),
                .hint = N_ ("The tax’s name; of what is exempt, why") },
  },
  .carry_out = settle,
};

static void
add_missing (GtkWidget *list, const UnsootPrefsFile *file, UnsootSession *session)
{
  for (int kind = 0; kind < UNSOOT_BILL_KINDS; kind++)
    if (!is_settled (file->tax_rules, unsoot_slug_of (unsoot_bill_kinds, kind)))
      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_prefs_row_new (session, &edit,
                                                 unsoot_slug_words (unsoot_bill_kinds, kind), NULL,
                                                 _ ("not settled"), NULL));
}

void
unsoot_prefs_card_taxes (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Tax by kind of line"));

  for (guint i = 0; i < file->tax_rules->len; i++)
    {
      const UnsootTaxRuleRow *rule = g_ptr_array_index (file->tax_rules, i);
      g_autofree char *rate = rate_text (rule);
      int kind = UNSOOT_BILL_OTHER, category = UNSOOT_TAX_STANDARD;
      g_autofree char *value = NULL;

      unsoot_slug_find (unsoot_bill_kinds, rule->line_kind, &kind);
      unsoot_slug_find (unsoot_tax_categories, rule->category, &category);
      value = rule->rate_milli_percent != 0
                  /* Translators: a tax rate */
                  ? g_strdup_printf (_ ("%s %%"), rate)
                  : g_strdup (unsoot_slug_words (unsoot_tax_categories, category));
      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_prefs_row_new (session, &edit,
                                                 unsoot_slug_words (unsoot_bill_kinds, kind),
                                                 rule->label, value, rule));
    }
  add_missing (list, file, session);
  gtk_box_append (GTK_BOX (card), list);
  if (file->tax_rules->len < UNSOOT_BILL_KINDS)
    gtk_box_append (GTK_BOX (card),
                    unsoot_prefs_form_button_new (
                        session, &settle_form, _ ("Settle what is missing…"), 0,
                        _ ("For every kind of line that is not settled yet. Each can be changed "
                           "by itself afterwards.")));
  unsoot_card_say (card, _ ("Which lines are taxed, and how, is local law: check it there."));
}
