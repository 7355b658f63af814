/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "dose-why.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "facts.h"
#include "format.h"
#include "side-mark.h"

static gint64
dose_of (const UnsootJobRow *job, UnsootSide side)
{
  return side == UNSOOT_SIDE_FUEL ? job->fuel_dose_ml : job->intake_dose_ml;
}

static const UnsootFluidRow *
fluid_of (const UnsootJobFile *file, UnsootSide side)
{
  return side == UNSOOT_SIDE_FUEL ? file->fuel_fluid : file->intake_fluid;
}

/* The job keeps the dose that was settled then; the rules may have changed since. */
static void
add_difference (GtkWidget *facts, const UnsootDose *dose, gint64 settled)
{
  g_autofree char *text = NULL;

  if (dose->ml == settled)
    return;
  if (dose->ml == 0)
    text = g_strdup (_ ("entered by hand: no rule gives a dose"));
  else
    {
      g_autofree char *now = unsoot_format_litres (dose->ml);
      /* Translators: the rule gives another amount today than the job has */
      text = g_strdup_printf (_ ("settled for this job; the rule gives %s"), now);
    }
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("But"), text);
}

static void
add_side (GtkWidget *box, const UnsootJobViewFile *file, UnsootSide side)
{
  const UnsootDose *dose = file->doses[side];
  const gint64 settled = dose_of (file->file->job, side);
  const UnsootFluidRow *fluid = fluid_of (file->file, side);
  GtkWidget *facts;
  GtkWidget *mark;

  if (dose == NULL)
    return;
  facts = unsoot_facts_new ();
  mark = unsoot_side_mark_new (side, settled);
  gtk_widget_set_halign (mark, GTK_ALIGN_START);
  if (gtk_widget_get_first_child (box) != NULL)
    gtk_widget_set_margin_top (mark, 12);
  gtk_box_append (GTK_BOX (box), mark);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Fluid"), fluid != NULL ? fluid->name : NULL);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Rule"), dose->rule);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("From"), dose->inputs);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Source"), dose->source);
  add_difference (facts, dose, settled);
  gtk_box_append (GTK_BOX (box), facts);
}

static GtkWidget *
popover_new (const UnsootJobViewFile *file)
{
  GtkWidget *popover = gtk_popover_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_set_size_request (box, 340, -1);
  gtk_widget_add_css_class (box, "card-content");
  add_side (box, file, UNSOOT_SIDE_FUEL);
  add_side (box, file, UNSOOT_SIDE_INTAKE);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  unsoot_access_name (popover, _ ("Why this much"));
  return popover;
}

GtkWidget *
unsoot_dose_why_new (const UnsootJobViewFile *file)
{
  GtkWidget *box, *why;

  if (file->doses[UNSOOT_SIDE_FUEL] == NULL && file->doses[UNSOOT_SIDE_INTAKE] == NULL)
    return NULL;
  box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  for (int side = UNSOOT_SIDE_FUEL; side <= UNSOOT_SIDE_INTAKE; side++)
    if (file->doses[side] != NULL)
      gtk_box_append (
          GTK_BOX (box),
          unsoot_side_mark_new ((UnsootSide) side, dose_of (file->file->job, (UnsootSide) side)));
  why = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (why), _ ("Why?"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (why), popover_new (file));
  gtk_widget_add_css_class (why, "flat");
  gtk_widget_add_css_class (why, "small-choice");
  gtk_widget_set_valign (why, GTK_ALIGN_CENTER);
  unsoot_access_name (why, _ ("Why this much?"));
  gtk_box_append (GTK_BOX (box), why);
  return box;
}
