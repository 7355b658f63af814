/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-fitted.h"

#include <glib/gi18n-lib.h>

#include "families.h"

enum
{
  EGR,
  HEATER,
  REGENERATION,
  ROAD,
  LOW_POINTS,
  FUEL_DOSE,
  INTAKE_DOSE,
  N_FIELDS
};

/* In the order of the choices. */
enum
{
  EGR_COOLER,
  EGR_VALVE,
  EGR_NONE
};

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &unsoot_prefs_fitted, error);
}

static const char *const egr_words[] = { N_ ("Valve and cooler"), N_ ("Valve"), N_ ("None"), NULL };
static const char *const yes_no[] = { N_ ("Yes"), N_ ("No"), NULL };
static const char *const road_words[]
    = { N_ ("Driven on the road"), N_ ("No road: run under load"), NULL };

static const UnsootDeedForm form = {
  .slug = "family-fitted",
  .title = N_ ("What it is fitted with"),
  .verb = N_ ("Save"),
  .done = N_ ("The engine family is saved"),
  .deed = UNSOOT_DEED_EDIT_FAMILY,
  .n_fields = N_FIELDS,
  .fields = {
    [EGR] = { .label = N_ ("EGR"), .kind = UNSOOT_ASK_CHOICE, .words = egr_words },
    [HEATER] = { .label = N_ ("Intake heater"), .kind = UNSOOT_ASK_CHOICE, .words = yes_no },
    [REGENERATION] = { .label = N_ ("Filter that regenerates"), .kind = UNSOOT_ASK_CHOICE,
                       .words = yes_no },
    [ROAD] = { .label = N_ ("Ends with"), .kind = UNSOOT_ASK_CHOICE, .words = road_words },
    [LOW_POINTS] = { .label = N_ ("Low points"), .optional = TRUE,
                     .hint = N_ ("Where liquid can stand, a comma between: charge cooler, left low pipe") },
    [FUEL_DOSE] = { .label = N_ ("Fuel side dose of its own"), .kind = UNSOOT_ASK_VOLUME,
                    .optional = TRUE, .hint = N_ ("Empty: by size class") },
    [INTAKE_DOSE] = { .label = N_ ("Intake side dose of its own"), .kind = UNSOOT_ASK_VOLUME,
                      .optional = TRUE },
  },
  .carry_out = carry_out,
};

static char *
dose_text (gint64 ml)
{
  return ml > 0 ? g_strdup_printf ("%d mL", (int) ml) : g_strdup ("");
}

/* Kept a line each, typed with commas. */
static char *
low_points_text (const char *kept)
{
  g_auto (GStrv) names = g_strsplit (kept != NULL ? kept : "", "\n", -1);

  return g_strjoinv (", ", names);
}

static char *
low_points_kept (const char *typed)
{
  g_auto (GStrv) names = g_strsplit (typed != NULL ? typed : "", ",", -1);
  g_autoptr (GString) kept = g_string_new (NULL);

  for (char **name = names; *name != NULL; name++)
    if (*g_strstrip (*name) != '\0')
      g_string_append_printf (kept, "%s%s", kept->len > 0 ? "\n" : "", *name);
  return g_string_free (g_steal_pointer (&kept), FALSE);
}

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootFamilyRow *family = record;

  switch (field)
    {
    case EGR:
      return g_strdup_printf ("%d", !family->has_egr         ? EGR_NONE
                                    : family->has_egr_cooler ? EGR_COOLER
                                                             : EGR_VALVE);
    case HEATER:
      return g_strdup (family->has_heater ? "0" : "1");
    case REGENERATION:
      return g_strdup (family->has_regeneration ? "0" : "1");
    case ROAD:
      return g_strdup (family->has_road ? "0" : "1");
    case LOW_POINTS:
      return low_points_text (family->low_points);
    case FUEL_DOSE:
      return dose_text (family->fuel_dose_ml);
    default:
      return dose_text (family->intake_dose_ml);
    }
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootFamilyRow *family = record;

  family->has_egr = order->values[EGR].number != EGR_NONE;
  family->has_egr_cooler = order->values[EGR].number == EGR_COOLER;
  family->has_heater = order->values[HEATER].number == 0;
  family->has_regeneration = order->values[REGENERATION].number == 0;
  family->has_road = order->values[ROAD].number == 0;
  g_free (family->low_points);
  family->low_points = low_points_kept (unsoot_deed_text (order, LOW_POINTS));
  family->fuel_dose_ml = order->values[FUEL_DOSE].number;
  family->intake_dose_ml = order->values[INTAKE_DOSE].number;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_family_save (db, who, record, NULL, error);
}

const UnsootPrefsEdit unsoot_prefs_fitted = { &form, &unsoot_family_row_type, text, apply, save };

void
unsoot_prefs_fitted_begin (UnsootFamilyRow *family)
{
  family->has_egr = TRUE;
  family->has_egr_cooler = TRUE;
  family->has_heater = TRUE;
  family->has_regeneration = TRUE;
  family->has_road = TRUE;
  g_free (family->low_points);
  family->low_points = g_strdup (_ ("charge cooler"));
}
