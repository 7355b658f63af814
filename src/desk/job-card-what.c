/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "dose-why.h"
#include "facts.h"
#include "format.h"
#include "meter-words.h"

/* Odometer or hours as they were read for this job. */
static void
add_meters (GtkWidget *facts, const UnsootJobFile *file)
{
  for (guint i = 0; i < file->meters->len; i++)
    {
      const UnsootMeterReadingRow *meter = g_ptr_array_index (file->meters, i);
      const gboolean hours = g_strcmp0 (meter->kind, "hours") == 0;
      g_autofree char *markup = NULL;
      GtkWidget *label;

      if (meter->job_id != file->job->id)
        continue;
      markup = unsoot_meter_markup (meter);
      label = unsoot_facts_add (UNSOOT_FACTS (facts), hours ? _ ("Hours") : _ ("Odometer"), "–");
      gtk_label_set_markup (GTK_LABEL (label), markup);
    }
}

static const char *
how_words (const char *how)
{
  static const UnsootSlug ways[]
      = { { 0, "in-person", N_ ("in person") }, { 1, "phone", N_ ("by phone") },
          { 2, "email", N_ ("by email") },      { 3, "text", N_ ("by text message") },
          { 4, "signed", N_ ("signed") },       { 0, NULL, NULL } };
  int value;

  return unsoot_slug_find (ways, how, &value) ? unsoot_slug_words (ways, value) : how;
}

static void
add_authorisations (GtkWidget *facts, const UnsootJobFile *file, UnsootSession *session)
{
  for (guint i = 0; i < file->authorisations->len; i++)
    {
      const UnsootAuthorisationRow *word = g_ptr_array_index (file->authorisations, i);
      g_autofree char *amount = unsoot_session_money (session, word->amount_minor);
      g_autofree char *when = unsoot_format_moment (word->at, unsoot_session_now (session),
                                                    unsoot_session_zone (session));
      /* Translators: who authorised the work, how, up to which amount, and when */
      g_autofree char *text = g_strdup_printf (_ ("%s, %s, up to %s, %s"), word->by_name,
                                               how_words (word->how), amount, when);
      unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Authorised"), text);
    }
}

void
unsoot_job_card_what (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  const UnsootJobFile *file = view->file;
  GtkWidget *facts = unsoot_facts_new (), *doses = unsoot_dose_why_new (view);

  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Complaint"), file->job->complaint);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Trouble codes"), file->job->codes);
  add_meters (facts, file);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Service"),
                    file->service != NULL ? file->service->name : NULL);
  if (doses != NULL)
    unsoot_facts_add_widget (UNSOOT_FACTS (facts), _ ("Fluid"), doses);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Purchase order"), file->job->po_number);
  add_authorisations (facts, file, session);
  if (file->job->comeback_of != 0)
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Comeback"), _ ("of an earlier job"));
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Note"), file->job->note);
  gtk_box_append (GTK_BOX (card), facts);
}
