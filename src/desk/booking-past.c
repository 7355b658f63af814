/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-past.h"

#include <glib/gi18n-lib.h>

#include "facts.h"
#include "format.h"
#include "path.h"

static char *
job_text (const UnsootJobLine *line, UnsootSession *session)
{
  const gint64 at = line->starts_at != 0 ? line->starts_at : line->made_at;
  g_autofree char *when
      = unsoot_format_moment_near (at, unsoot_session_now (session), unsoot_session_zone (session));
  UnsootJobStatus status;

  if (!unsoot_job_status_find (line->status, &status))
    return g_strdup_printf ("%s · %s", when, line->service);
  return g_strdup_printf ("%s · %s · %s", when, line->service, unsoot_job_status_words (status));
}

GtkWidget *
unsoot_booking_past_new (const UnsootBookingFile *file, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *due = NULL;
  GtkWidget *facts;

  if (file->past == NULL || (file->past->len == 0 && file->next_due_on == NULL))
    return NULL;
  facts = unsoot_facts_new ();
  due = file->next_due_on != NULL ? unsoot_format_day (file->next_due_on, today) : NULL;
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Next due"), due);
  for (guint i = 0; i < file->past->len; i++)
    {
      g_autofree char *text = job_text (g_ptr_array_index (file->past, i), session);
      unsoot_facts_add (UNSOOT_FACTS (facts), i == 0 ? _ ("Here before") : "", text);
    }
  return facts;
}
