/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fits.h"

#include <glib/gi18n-lib.h>

#include "fold.h"

/* What a row can ask for; as numbers, how much each narrows the choice. */
enum
{
  BY_MAKE = 1 << 0,
  BY_YEAR = 1 << 1,
  BY_ENGINE = 1 << 2,
  BY_FAMILY = 1 << 3,
  BY_MODEL = 1 << 4,
};

/* @asked, and of that what is unknown or wrong about the vehicle. */
typedef struct
{
  guint asked;
  guint unknown;
  guint wrong;
} Comparison;

static gboolean
is_blank (const char *text)
{
  return text == NULL || *text == '\0';
}

static gboolean
same_words (const char *a, const char *b)
{
  g_autofree char *folded_a = unsoot_fold_compact (a, NULL);
  g_autofree char *folded_b = unsoot_fold_compact (b, NULL);

  return folded_a != NULL && g_strcmp0 (folded_a, folded_b) == 0;
}

static void
compare_words (Comparison *comparison, guint what, const char *asked, const char *known)
{
  if (is_blank (asked))
    return;
  comparison->asked |= what;
  if (is_blank (known))
    comparison->unknown |= what;
  else if (!same_words (asked, known))
    comparison->wrong |= what;
}

static void
compare_year (Comparison *comparison, const UnsootFitRow *row, int year)
{
  if (row->year_from == 0 && row->year_to == 0)
    return;
  comparison->asked |= BY_YEAR;
  if (year == 0)
    comparison->unknown |= BY_YEAR;
  else if (year < row->year_from || (row->year_to != 0 && year > row->year_to))
    comparison->wrong |= BY_YEAR;
}

static void
compare_family (Comparison *comparison, gint64 asked, gint64 known)
{
  if (asked == 0)
    return;
  comparison->asked |= BY_FAMILY;
  if (known == 0)
    comparison->unknown |= BY_FAMILY;
  else if (asked != known)
    comparison->wrong |= BY_FAMILY;
}

static Comparison
compare (const UnsootFitRow *row, const UnsootFitVehicle *vehicle)
{
  Comparison comparison = { 0 };

  compare_words (&comparison, BY_MAKE, row->make, vehicle->make);
  compare_words (&comparison, BY_MODEL, row->model, vehicle->model);
  compare_words (&comparison, BY_ENGINE, row->engine, vehicle->engine);
  compare_year (&comparison, row, vehicle->year);
  compare_family (&comparison, row->family_id, vehicle->family_id);
  return comparison;
}

static void
add_part (GString *reason, const char *part)
{
  if (is_blank (part))
    return;
  if (reason->len > 0)
    g_string_append (reason, ", ");
  g_string_append (reason, part);
}

static char *
years_words (const UnsootFitRow *row)
{
  if (row->year_from != 0 && row->year_to == row->year_from)
    return g_strdup_printf ("%d", row->year_from);
  if (row->year_from != 0 && row->year_to != 0)
    /* Translators: model years, as in "2011 to 2016" */
    return g_strdup_printf (_ ("%d to %d"), row->year_from, row->year_to);
  if (row->year_from != 0)
    /* Translators: a model year and all after it */
    return g_strdup_printf (_ ("from %d"), row->year_from);
  if (row->year_to != 0)
    /* Translators: a model year and all before it */
    return g_strdup_printf (_ ("up to %d"), row->year_to);
  return NULL;
}

static char *
family_words (const UnsootFitRow *row, const UnsootFitVehicle *vehicle)
{
  if (row->family_id == 0)
    return NULL;
  if (row->family_id != vehicle->family_id || is_blank (vehicle->family_name))
    return g_strdup (_ ("its engine family"));
  /* Translators: an engine family's name */
  return g_strdup_printf (_ ("family %s"), vehicle->family_name);
}

static void
add_unknown (GString *reason, guint unknown)
{
  static const struct
  {
    guint what;
    const char *words;
  } missing[] = {
    { BY_MAKE, N_ ("make not known") },     { BY_MODEL, N_ ("model not known") },
    { BY_YEAR, N_ ("year not known") },     { BY_ENGINE, N_ ("engine not known") },
    { BY_FAMILY, N_ ("family not known") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (missing); i++)
    if (unknown & missing[i].what)
      g_string_append_printf (reason, "; %s", _ (missing[i].words));
}

static char *
reason_words (const UnsootFitRow *row, const UnsootFitVehicle *vehicle, guint unknown)
{
  GString *reason = g_string_new (row->make);
  g_autofree char *years = years_words (row);
  g_autofree char *family = family_words (row, vehicle);

  if (!is_blank (row->model))
    g_string_append_printf (reason, "%s%s", reason->len > 0 ? " " : "", row->model);
  add_part (reason, row->engine);
  add_part (reason, years);
  add_part (reason, family);
  if (reason->len == 0)
    g_string_append (reason, _ ("fits everything"));
  add_unknown (reason, unknown);
  return g_string_free (reason, FALSE);
}

static void
fit_free (gpointer data)
{
  UnsootFit *fit = data;

  g_free (fit->reason);
  g_free (fit);
}

static int
better_first (gconstpointer a, gconstpointer b)
{
  const UnsootFit *left = *(UnsootFit *const *) a;
  const UnsootFit *right = *(UnsootFit *const *) b;

  if (left->certain != right->certain)
    return left->certain ? -1 : 1;
  if (left->specificity != right->specificity)
    return left->specificity > right->specificity ? -1 : 1;
  return left->row < right->row ? -1 : 1;
}

static void
keep_first_of_each_type (GPtrArray *fits)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_int64_hash, g_int64_equal);

  for (guint i = 0; i < fits->len;)
    {
      UnsootFit *fit = g_ptr_array_index (fits, i);

      if (g_hash_table_add (seen, &fit->type_id))
        i++;
      else
        g_ptr_array_remove_index (fits, i);
    }
}

GPtrArray *
unsoot_fits (const UnsootFitRow *rows, gsize n_rows, const UnsootFitVehicle *vehicle)
{
  GPtrArray *fits = g_ptr_array_new_with_free_func (fit_free);

  for (gsize i = 0; i < n_rows; i++)
    {
      Comparison found = compare (&rows[i], vehicle);
      UnsootFit *fit = NULL;

      if (found.wrong != 0)
        continue;
      fit = g_new0 (UnsootFit, 1);
      fit->type_id = rows[i].type_id;
      fit->row = i;
      fit->specificity = found.asked;
      fit->certain = found.unknown == 0;
      fit->reason = reason_words (&rows[i], vehicle, found.unknown);
      g_ptr_array_add (fits, fit);
    }
  g_ptr_array_sort (fits, better_first);
  keep_first_of_each_type (fits);
  return fits;
}
