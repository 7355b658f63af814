/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hazard-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "facts.h"
#include "flammable.h"
#include "format.h"
#include "hazard.h"

static char *
category_words (const UnsootFluidRow *fluid)
{
  const UnsootFlammable category
      = unsoot_flammable_category (fluid->flash_point_c, fluid->boiling_point_c);
  g_autofree char *point = NULL;

  if (isnan (fluid->flash_point_c))
    return g_strdup (_ ("not entered: treat it as the most flammable"));
  point = unsoot_format_number (fluid->flash_point_c, 1);
  if (category == UNSOOT_FLAMMABLE_NOT)
    /* Translators: a temperature in degrees Celsius */
    return g_strdup_printf (_ ("%s °C: no flammable liquid by 29 CFR 1910.106"), point);
  /* Translators: a temperature in degrees Celsius, and a number of 1 to 4 */
  return g_strdup_printf (_ ("%s °C: category %d by 29 CFR 1910.106"), point,
                          (int) category - (int) UNSOOT_FLAMMABLE_1 + 1);
}

static char *
signs_words (const UnsootLabel *label)
{
  g_autoptr (GStrvBuilder) signs = g_strv_builder_new ();
  g_auto (GStrv) all = NULL;

  for (int i = UNSOOT_GHS01; i < UNSOOT_PICTOGRAMS; i++)
    if (label->pictograms[i])
      g_strv_builder_add (signs, unsoot_slug_words (unsoot_pictograms, i));
  all = g_strv_builder_end (signs);
  return g_strjoinv ("\n", all);
}

static char *
statements_words (const GPtrArray *statements)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < statements->len; i++)
    {
      const UnsootStatement *statement = g_ptr_array_index (statements, i);
      g_string_append_printf (text, "%s%s  %s", i > 0 ? "\n" : "", statement->code,
                              unsoot_statement_text (statement->code));
    }
  return g_strdup (text->str);
}

static void
add_label (GtkWidget *facts, const UnsootFluidRow *fluid)
{
  g_autofree char *codes
      = g_strconcat (fluid->h_statements != NULL ? fluid->h_statements : "", " ",
                     fluid->p_statements != NULL ? fluid->p_statements : "", NULL);
  g_auto (UnsootLabel) label = { 0 };
  g_autoptr (GError) error = NULL;
  g_autofree char *signs = NULL, *hazards = NULL;

  if (!unsoot_label_read (codes, &label, &error))
    {
      unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Label"), error->message);
      return;
    }
  signs = signs_words (&label);
  hazards = statements_words (label.hazards);
  if (label.signal != UNSOOT_SIGNAL_NONE)
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Signal word"),
                      unsoot_slug_words (unsoot_signals, (int) label.signal));
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Signs"), signs);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Hazards"), hazards);
}

GtkWidget *
unsoot_hazard_facts_new (const UnsootFluidRow *fluid, const char *today)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *facts = unsoot_facts_new ();
  GtkWidget *caution = gtk_label_new (_ ("The supplier's safety data sheet and local rules come "
                                         "first: check local rules for storage and disposal."));
  g_autofree char *category = category_words (fluid);
  g_autofree char *sheet = fluid->sds_on != NULL ? unsoot_format_day (fluid->sds_on, today) : NULL;

  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Flash point"), category);
  if (unsoot_flammable_is_d001 (fluid->flash_point_c))
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("As waste"), _ ("ignitable, D001 (40 CFR 261.21)"));
  add_label (facts, fluid);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("UN number"), fluid->un_number);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Data sheet of"), sheet);
  gtk_label_set_xalign (GTK_LABEL (caution), 0);
  gtk_label_set_wrap (GTK_LABEL (caution), TRUE);
  gtk_widget_add_css_class (caution, "trouble");
  gtk_box_append (GTK_BOX (box), facts);
  gtk_box_append (GTK_BOX (box), caution);
  return box;
}
