/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "prefs-edit.h"
#include "services.h"
#include "side.h"
#include "weight-class.h"

enum
{
  DOSE,
  SOURCE,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const UnsootDeedForm form = {
  .slug = "dose-rule",
  .title = N_ ("Dose"),
  .verb = N_ ("Save"),
  .done = N_ ("The dose is saved"),
  .deed = UNSOOT_DEED_EDIT_DOSE_RULE,
  .n_fields = N_FIELDS,
  .fields = {
    [DOSE] = { .label = N_ ("Fluid"), .kind = UNSOOT_ASK_VOLUME,
               .hint = N_ ("As 2 L, 2 qt or 500 mL. What the vehicle’s maker says comes first.") },
    [SOURCE] = { .label = N_ ("Where that is from"), .optional = TRUE,
                 .hint = N_ ("Empty: common practice, no source") },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootDoseRuleRow *rule = record;

  return field == DOSE ? g_strdup_printf ("%d mL", (int) rule->dose_ml) : g_strdup (rule->source);
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootDoseRuleRow *rule = record;
  const char *source = unsoot_deed_text (order, SOURCE);

  rule->dose_ml = order->values[DOSE].number;
  g_free (rule->source);
  rule->source = g_strdup (source != NULL ? source : _ ("common practice, no source"));
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_dose_rule_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_dose_rule_row_type, text, apply, save };

static char *
title_of (const UnsootDoseRuleRow *rule)
{
  UnsootSizeClass size;
  UnsootSide side = UNSOOT_SIDE_FUEL;

  unsoot_side_from_slug (rule->side, &side);
  if (!unsoot_size_class_find (rule->size_class, &size))
    return g_strdup (rule->size_class);
  return g_strdup_printf ("%s, %s", side == UNSOOT_SIDE_FUEL ? _ ("Fuel side") : _ ("Intake side"),
                          unsoot_size_class_words (size));
}

void
unsoot_prefs_card_doses (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Doses by size class"));

  for (guint i = 0; i < file->dose_rules->len; i++)
    {
      const UnsootDoseRuleRow *rule = g_ptr_array_index (file->dose_rules, i);
      g_autofree char *dose = unsoot_format_litres (rule->dose_ml);
      g_autofree char *title = title_of (rule);

      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_prefs_row_new (session, &edit, title, rule->source, dose, rule));
    }
  gtk_box_append (GTK_BOX (card), list);
  unsoot_card_say (card, _ ("Where an engine family has a dose of its own, that one counts. Below "
                            "¾-ton there is none: the lead technician enters it for the job."));
}
