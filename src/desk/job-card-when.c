/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "facts.h"
#include "format.h"

static void
add_time (GtkWidget *facts, const UnsootBookingRow *booking, UnsootSession *session)
{
  GTimeZone *zone = unsoot_session_zone (session);
  g_autofree char *text = unsoot_format_from_to (booking->starts_at, booking->ends_at,
                                                 unsoot_session_now (session), zone);
  g_autofree char *exact = unsoot_format_exact (booking->starts_at, zone);
  GtkWidget *label = unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Time"), text);

  gtk_widget_set_tooltip_text (label, exact);
}

static void
add_adapters (GtkWidget *facts, const UnsootJobFile *file)
{
  for (guint i = 0; i < file->adapters->len; i++)
    {
      const UnsootJobAdapter *adapter = g_ptr_array_index (file->adapters, i);
      g_autofree char *text = NULL;

      if (adapter->item == NULL)
        text = g_strdup_printf (_ ("%s, none chosen yet"), adapter->type->name);
      else if (adapter->item->bin != NULL)
        /* Translators: an adapter's tag, what it is, and the bin it lies in */
        text = g_strdup_printf (_ ("%s %s, bin %s"), adapter->item->label, adapter->type->name,
                                adapter->item->bin);
      else
        text = g_strdup_printf ("%s %s", adapter->item->label, adapter->type->name);
      unsoot_facts_add (UNSOOT_FACTS (facts), i == 0 ? _ ("Adapters") : "", text);
    }
}

static void
add_conflicts (UnsootCard *card, const GPtrArray *conflicts)
{
  for (guint i = 0; i < conflicts->len; i++)
    {
      GtkWidget *label = gtk_label_new (g_ptr_array_index (conflicts, i));
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_widget_add_css_class (label, "trouble");
      gtk_box_append (GTK_BOX (card), label);
    }
}

static void
add_run (GtkWidget *facts, const UnsootJobFile *file, UnsootSession *session)
{
  g_autofree char *text = NULL;

  if (file->run == NULL)
    return;
  text = unsoot_format_from_to (file->run->began_at,
                                file->run->ended_at != 0 ? file->run->ended_at
                                                         : unsoot_session_now (session),
                                unsoot_session_now (session), unsoot_session_zone (session));
  unsoot_facts_add (UNSOOT_FACTS (facts), file->run->ended_at != 0 ? _ ("Was run") : _ ("Running"),
                    text);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Tag"), file->run->tag);
}

void
unsoot_job_card_when (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  const UnsootJobFile *file = view->file;
  GtkWidget *facts = unsoot_facts_new ();

  if (file->booking != NULL)
    add_time (facts, file->booking, session);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Bay"), file->bay != NULL ? file->bay->name : NULL);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Machine"),
                    file->machine != NULL ? file->machine->name : NULL);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Technician"),
                    file->technician != NULL ? file->technician->name : NULL);
  add_adapters (facts, file);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Procedure"),
                    file->procedure != NULL ? file->procedure->title : NULL);
  add_run (facts, file, session);
  if (unsoot_facts_is_empty (UNSOOT_FACTS (facts)))
    {
      g_object_unref (g_object_ref_sink (facts));
      unsoot_card_say (card, _ ("Not booked yet."));
    }
  else
    gtk_box_append (GTK_BOX (card), facts);
  add_conflicts (card, view->conflicts);
}
