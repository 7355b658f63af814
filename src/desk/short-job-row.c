/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "short-job-row.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "link-row.h"

GtkWidget *
unsoot_short_job_row_new (const UnsootShortJob *line, UnsootSession *session, gboolean with_fluid)
{
  g_autofree char *when = unsoot_format_moment (line->starts_at, unsoot_session_now (session),
                                                unsoot_session_zone (session));
  g_autofree char *lack = unsoot_format_litres (line->short_ml);
  g_autofree char *dose = unsoot_format_litres (line->dose_ml);
  /* Translators: number of a job, and its vehicle */
  g_autofree char *title
      = g_strdup_printf (_ ("Job %d · %s"), (int) line->job_number, line->vehicle);
  /* Translators: when a job is, a fluid, its dose */
  g_autofree char *detail = with_fluid
                                ? g_strdup_printf (_ ("%s · %s, dose %s"), when, line->fluid, dose)
                                /* Translators: when a job is, its dose of the fluid */
                                : g_strdup_printf (_ ("%s · dose %s"), when, dose);
  /* Translators: a volume that lacks */
  g_autofree char *short_by = g_strdup_printf (_ ("%s short"), lack);
  GtkWidget *row = unsoot_link_row_new ("job", line->job_id, title, detail);
  GtkWidget *label = gtk_label_new (short_by);

  gtk_widget_add_css_class (label, "error");
  gtk_widget_add_css_class (label, "figures");
  unsoot_link_row_add (row, label);
  return row;
}
