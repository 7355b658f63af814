/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-link.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "link-row.h"
#include "side-mark.h"
#include "status-mark.h"

GtkWidget *
unsoot_job_link_new (const UnsootJobLine *line, UnsootSession *session, gboolean with_vehicle)
{
  const gint64 at = line->starts_at != 0 ? line->starts_at : line->made_at;
  g_autofree char *when
      = unsoot_format_moment_near (at, unsoot_session_now (session), unsoot_session_zone (session));
  /* Translators: a job's number, and what was or is to be done */
  g_autofree char *title = g_strdup_printf (_ ("Job %d · %s"), (int) line->number, line->service);
  g_autofree char *detail
      = with_vehicle ? g_strdup_printf ("%s · %s", when, line->vehicle) : g_strdup (when);
  GtkWidget *row = unsoot_link_row_new ("job", line->id, title, detail);
  GtkWidget *marks = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *status = unsoot_status_mark_new ();

  unsoot_side_marks_append (GTK_BOX (marks), line->sides);
  unsoot_link_row_add (row, marks);
  unsoot_status_mark_set (status, line->status);
  unsoot_link_row_add (row, status);
  return row;
}
