/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quotes.h"

#include <glib/gi18n-lib.h>

#include "adapters.h"
#include "civil.h"
#include "customers.h"
#include "deed.h"
#include "dose.h"
#include "families.h"
#include "fluids.h"
#include "job-bills.h"
#include "jobs.h"
#include "money.h"
#include "procedures.h"
#include "quote-checks.h"
#include "services.h"
#include "shops.h"
#include "stocks.h"
#include "vehicles.h"

static void
clear_dose (UnsootQuoteDose *dose)
{
  g_free (dose->reason);
  g_free (dose->fluid);
}

void
unsoot_quote_free (UnsootQuote *quote)
{
  if (quote == NULL)
    return;
  unsoot_vehicle_row_free (quote->vehicle);
  unsoot_family_row_free (quote->family);
  unsoot_service_row_free (quote->service);
  unsoot_procedure_row_free (quote->procedure);
  clear_dose (&quote->fuel);
  clear_dose (&quote->intake);
  g_clear_pointer (&quote->adapters, g_ptr_array_unref);
  g_clear_pointer (&quote->lines, g_ptr_array_unref);
  g_clear_pointer (&quote->bill, unsoot_bill_free);
  g_clear_pointer (&quote->reasons, g_ptr_array_unref);
  g_clear_pointer (&quote->warnings, g_ptr_array_unref);
  g_clear_pointer (&quote->declined, g_ptr_array_unref);
  g_free (quote->currency);
  g_free (quote->valid_until);
  g_free (quote);
}

/* What a preview is made from besides its wish. */
typedef struct
{
  UnsootDb *db;
  const UnsootQuoteWish *wish;
  gint64 now;
  UnsootShopRow *shop;
  UnsootCustomerRow *customer;
  UnsootQuote *quote;
} Making;

static void G_GNUC_PRINTF (2, 3) say (GPtrArray *sentences, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_ptr_array_add (sentences, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

static char *
money (const Making *making, gint64 amount)
{
  return unsoot_money_format (amount, making->shop->currency, UNSOOT_MONEY_POINT);
}

/* Vehicle, its family, the service, and the procedure it would be run by. */
static gboolean
gather (Making *making, GError **error)
{
  UnsootQuote *quote = making->quote;
  g_autoptr (GError) failed = NULL;

  quote->vehicle = making->wish->vehicle != NULL
                       ? unsoot_record_copy (&unsoot_vehicle_row_type, making->wish->vehicle)
                       : unsoot_vehicle_load (making->db, making->wish->vehicle_id, error);
  quote->service = quote->vehicle != NULL
                       ? unsoot_service_load (making->db, making->wish->service_id, error)
                       : NULL;
  if (quote->service == NULL)
    return FALSE;
  making->customer = making->wish->customer != NULL
                         ? unsoot_record_copy (&unsoot_customer_row_type, making->wish->customer)
                         : unsoot_customer_load (making->db, quote->vehicle->customer_id, error);
  if (making->customer == NULL)
    return FALSE;
  if (quote->vehicle->family_id == 0)
    {
      say (quote->warnings, _ ("The engine family is not settled: nothing can be run before."));
      return TRUE;
    }
  quote->family = unsoot_family_load (making->db, quote->vehicle->family_id, error);
  if (quote->family == NULL)
    return FALSE;
  quote->procedure
      = unsoot_procedure_in_use (making->db, quote->family->id, quote->service->sides, &failed);
  if (failed == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&failed));
  return FALSE;
}

static void
warn_of_procedure (Making *making)
{
  UnsootQuote *quote = making->quote;

  if (quote->family == NULL)
    return;
  if (quote->procedure == NULL)
    say (quote->warnings, _ ("%s has no procedure for this service yet."), quote->family->name);
  else if (quote->procedure->stop_reason != NULL)
    say (quote->warnings, _ ("The procedure “%s” is not to be run: %s."), quote->procedure->title,
         quote->procedure->stop_reason);
  else
    say (quote->reasons, _ ("Procedure: %s, version %d."), quote->procedure->title,
         (int) quote->procedure->number);
  if (!(quote->family->window_min_pa > 0.0))
    say (quote->warnings, _ ("%s has no pressure window entered, so it can't be run."),
         quote->family->name);
}

static GArray *
dose_rules (Making *making, GPtrArray **rows, GError **error)
{
  GArray *rules = g_array_new (FALSE, TRUE, sizeof (UnsootDoseRule));

  *rows = unsoot_dose_rule_list (making->db, error);
  for (guint i = 0; *rows != NULL && i < (*rows)->len; i++)
    {
      const UnsootDoseRuleRow *row = (*rows)->pdata[i];
      UnsootDoseRule rule = { .ml = row->dose_ml, .source = row->source };
      if (unsoot_side_from_slug (row->side, &rule.side)
          && unsoot_size_class_find (row->size_class, &rule.size))
        g_array_append_val (rules, rule);
    }
  return rules;
}

static UnsootDose *
ask_dose (Making *making, UnsootSide side, GError **error)
{
  const UnsootQuote *quote = making->quote;
  const UnsootFamilyRow *family = quote->family;
  g_autoptr (GPtrArray) rows = NULL;
  g_autoptr (GArray) rules = dose_rules (making, &rows, error);
  UnsootDoseAsk ask = { .side = side, .gvwr_lb = quote->vehicle->gvwr_lb };

  if (rows == NULL)
    return NULL;
  if (family != NULL)
    {
      ask.family_name = family->name;
      ask.family_ml = side == UNSOOT_SIDE_FUEL ? family->fuel_dose_ml : family->intake_dose_ml;
      unsoot_size_class_find (family->size_class, &ask.family_size);
    }
  ask.rules = rules->len > 0 ? (const UnsootDoseRule *) (gconstpointer) rules->data : NULL;
  ask.n_rules = rules->len;
  return unsoot_dose (&ask);
}

static gboolean
set_volume (Making *making, UnsootSide side, gint64 entered, UnsootQuoteDose *dose, GError **error)
{
  if (entered > 0)
    {
      g_autofree char *volume = unsoot_dose_volume_words (entered);
      dose->ml = entered;
      dose->reason = g_strdup_printf (_ ("%s: entered by the lead technician"), volume);
      return TRUE;
    }
  g_autoptr (UnsootDose) reasoned = ask_dose (making, side, error);
  if (reasoned == NULL)
    return FALSE;
  if (reasoned->origin == UNSOOT_DOSE_NONE)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, _ ("%s: %s."),
                             unsoot_side_label (side), reasoned->rule);
  dose->ml = reasoned->ml;
  dose->reason = g_strdup (reasoned->rule);
  say (making->quote->reasons, _ ("%s, %s (%s; from %s)."), unsoot_side_label (side),
       reasoned->rule, reasoned->inputs, reasoned->source);
  return TRUE;
}

/* Of the side's fluids the one with most that is free. */
static gint64
usual_fluid (Making *making, const char *side, GError **error)
{
  g_autoptr (GPtrArray) stocks = unsoot_fluid_stock_list (making->db, making->now, error);
  const UnsootFluidStock *best = NULL;

  if (stocks == NULL)
    return 0;
  for (guint i = 0; i < stocks->len; i++)
    {
      const UnsootFluidStock *stock = stocks->pdata[i];
      if (g_strcmp0 (stock->side, side) == 0 && (best == NULL || stock->free_ml > best->free_ml))
        best = stock;
    }
  if (best == NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      g_strcmp0 (side, "fuel") == 0
                          ? _ ("The shop has no fluid for the fuel side. Add one first.")
                          : _ ("The shop has no fluid for the intake side. Add one first."));
  return best != NULL ? best->fluid_id : 0;
}

static void
add_line (Making *making, const char *kind, const char *text, gint64 quantity_milli,
          const char *unit, gint64 price, gint64 fluid_id)
{
  UnsootJobLineRow *line = unsoot_job_line_row_new ();

  line->position = making->quote->lines->len + 1;
  line->kind = g_strdup (kind);
  line->text = g_strdup (text);
  line->quantity_milli = quantity_milli;
  line->unit = g_strdup (unit);
  line->unit_price_minor = price;
  line->fluid_id = fluid_id;
  line->state = g_strdup ("offered");
  g_ptr_array_add (making->quote->lines, line);
}

static gboolean
add_fluid (Making *making, UnsootQuoteDose *dose, const char *side, GError **error)
{
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (making->db, dose->fluid_id, error);

  if (fluid == NULL)
    return FALSE;
  if (g_strcmp0 (fluid->side, side) != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("%s is for the other side. Choose a fluid of this side."),
                             fluid->name);
  if (!fluid->active)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("%s is out of use. Choose another fluid."), fluid->name);
  g_autofree char *price = money (making, fluid->price_minor);
  g_autofree char *volume = unsoot_dose_volume_words (dose->ml);
  dose->fluid = g_strdup (fluid->name);
  add_line (making, "fluid", fluid->name, dose->ml, "L", fluid->price_minor, fluid->id);
  say (making->quote->reasons, _ ("%s: %s at %s a litre."), fluid->name, volume, price);
  return TRUE;
}

static gboolean
do_side (Making *making, UnsootSide side, gint64 entered, gint64 fluid_id, UnsootQuoteDose *dose,
         GError **error)
{
  const char *slug = unsoot_side_to_slug (side);
  const char *sides = making->quote->service->sides;

  if (g_strcmp0 (sides, "both") != 0 && g_strcmp0 (sides, slug) != 0)
    return TRUE;
  if (!set_volume (making, side, entered, dose, error))
    return FALSE;
  dose->fluid_id = fluid_id != 0 ? fluid_id : usual_fluid (making, slug, error);
  return dose->fluid_id != 0 && add_fluid (making, dose, slug, error)
         && unsoot_quote_check_fluid (making->db, making->shop, making->wish, making->now,
                                      making->quote, dose, error);
}

static gboolean
add_kit (Making *making, GError **error)
{
  g_autoptr (GPtrArray) kit = NULL;

  if (making->quote->family == NULL)
    return TRUE;
  kit = unsoot_family_kit (making->db, making->quote->family->id, error);
  for (guint i = 0; kit != NULL && i < kit->len; i++)
    {
      const UnsootKitItemRow *item = kit->pdata[i];
      add_line (making, "kit", item->name, item->quantity * 1000, _ ("each"), item->price_minor, 0);
      say (making->quote->reasons, _ ("Kit: %d × %s, which %s needs each time."),
           (int) item->quantity, item->name, making->quote->family->name);
    }
  return kit != NULL;
}

static const UnsootJobLineRow *
declined_line (const UnsootQuote *quote, gint64 id)
{
  for (guint i = 0; i < quote->declined->len; i++)
    {
      const UnsootJobLineRow *line = quote->declined->pdata[i];
      if (line->id == id)
        return line;
    }
  return NULL;
}

/* What was declined earlier and is wanted now. */
static gboolean
add_again (Making *making, GError **error)
{
  for (gsize i = 0; i < making->wish->n_again; i++)
    {
      const UnsootJobLineRow *line = declined_line (making->quote, making->wish->again[i]);
      if (line == NULL)
        return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_FOUND,
                                 _ ("A line that was to be offered again is not open any more."));
      add_line (making, line->kind, line->text, line->quantity_milli, line->unit,
                line->unit_price_minor, line->fluid_id);
    }
  return TRUE;
}

static gboolean
add_lines (Making *making, GError **error)
{
  UnsootQuote *quote = making->quote;
  const UnsootQuoteWish *wish = making->wish;
  g_autofree char *price = money (making, quote->service->price_minor);

  add_line (making, "labour", quote->service->name, 1000, _ ("job"), quote->service->price_minor,
            0);
  say (quote->reasons, _ ("%s: %s, planned for %d minutes."), quote->service->name, price,
       (int) quote->service->planned_minutes);
  quote->planned_minutes = quote->service->planned_minutes;
  if (!do_side (making, UNSOOT_SIDE_FUEL, wish->fuel_ml, wish->fuel_fluid_id, &quote->fuel, error)
      || !do_side (making, UNSOOT_SIDE_INTAKE, wish->intake_ml, wish->intake_fluid_id,
                   &quote->intake, error)
      || !add_kit (making, error))
    return FALSE;
  if (quote->service->disposal_minor > 0)
    add_line (making, "disposal", _ ("Disposal of used fluid"), 1000, _ ("job"),
              quote->service->disposal_minor, 0);
  quote->declined = unsoot_vehicle_declined (making->db, quote->vehicle->id, error);
  return quote->declined != NULL && add_again (making, error);
}

static gboolean
find_adapters (Making *making, GError **error)
{
  UnsootQuote *quote = making->quote;
  gint64 from = making->wish->wanted_at != 0 ? making->wish->wanted_at : making->now;

  quote->adapters
      = unsoot_adapters_fitting (making->db, quote->vehicle, quote->service->sides, from,
                                 from + quote->planned_minutes * 60, making->wish->job_id, error);
  if (quote->adapters == NULL)
    return FALSE;
  if (quote->adapters->len == 0)
    say (quote->warnings, _ ("No adapter is known to fit this vehicle."));
  for (guint i = 0; i < quote->adapters->len; i++)
    {
      const UnsootAdapterFit *fit = quote->adapters->pdata[i];
      const UnsootItemState *first = fit->items->len > 0 ? fit->items->pdata[0] : NULL;
      if (first != NULL && first->place == UNSOOT_ITEM_HERE)
        say (quote->reasons, _ ("Adapter %s: %s."), fit->type->code, fit->reason);
      else
        say (quote->warnings, _ ("No adapter %s is free: %s."), fit->type->code,
             first != NULL ? first->words : _ ("the shop has none"));
    }
  return TRUE;
}

static gboolean
reckon (Making *making, GError **error)
{
  UnsootQuote *quote = making->quote;
  g_autoptr (UnsootShopTerms) terms = unsoot_shop_terms_load (making->db, making->customer, error);
  g_autofree char *today = unsoot_shop_date (making->shop, making->now);
  int day;

  if (terms == NULL || !unsoot_day_parse (today, &day, error))
    return FALSE;
  quote->bill = unsoot_job_lines_bill (quote->lines, terms, error);
  if (quote->bill == NULL)
    return FALSE;
  if (terms->exempt_reason != NULL)
    say (quote->reasons, _ ("No tax: %s."), terms->exempt_reason);
  unsoot_quote_check_terms (making->shop, making->customer, quote);
  quote->currency = g_strdup (making->shop->currency);
  quote->valid_until = unsoot_day_iso (day + (int) making->shop->estimate_valid_days);
  return TRUE;
}

static UnsootQuote *
new_quote (void)
{
  UnsootQuote *quote = g_new0 (UnsootQuote, 1);

  quote->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_job_line_row_free);
  quote->reasons = g_ptr_array_new_with_free_func (g_free);
  quote->warnings = g_ptr_array_new_with_free_func (g_free);
  return quote;
}

static gboolean
make (Making *making, GError **error)
{
  if (!gather (making, error))
    return FALSE;
  warn_of_procedure (making);
  if (making->quote->vehicle->emission_altered)
    say (making->quote->warnings,
         _ ("Parts of the emission control are missing or altered. Local law comes first."));
  return add_lines (making, error) && find_adapters (making, error) && reckon (making, error);
}

UnsootQuote *
unsoot_quote_preview (UnsootDb *db, const UnsootQuoteWish *wish, gint64 now, GError **error)
{
  g_autoptr (UnsootQuote) quote = new_quote ();
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  Making making = { db, wish, now, shop, NULL, quote };

  gboolean made = shop != NULL && make (&making, error);
  unsoot_customer_row_free (making.customer);
  return made ? g_steal_pointer (&quote) : NULL;
}
