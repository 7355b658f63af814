/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "status-mark.h"

#include "path.h"

static const char *
ground (UnsootJobStatus status)
{
  switch (status)
    {
    case UNSOOT_JOB_QUOTED:
    case UNSOOT_JOB_BOOKED:
      return "ahead";
    case UNSOOT_JOB_ARRIVED:
    case UNSOOT_JOB_IN_BAY:
      return "now";
    case UNSOOT_JOB_DONE:
    case UNSOOT_JOB_INVOICED:
    case UNSOOT_JOB_PAID:
      return "done";
    case UNSOOT_JOB_DECLINED:
    case UNSOOT_JOB_CANCELLED:
      return "off";
    case UNSOOT_JOB_STOPPED:
      return "stopped";
    }
  g_return_val_if_reached ("ahead");
}

GtkWidget *
unsoot_status_mark_new (void)
{
  GtkWidget *mark = gtk_label_new (NULL);

  gtk_widget_set_halign (mark, GTK_ALIGN_START);
  gtk_widget_set_valign (mark, GTK_ALIGN_CENTER);
  return mark;
}

void
unsoot_status_mark_set (GtkWidget *mark, const char *slug)
{
  const char *classes[] = { "status-mark", NULL, NULL };
  UnsootJobStatus status;

  if (unsoot_job_status_find (slug, &status))
    {
      classes[1] = ground (status);
      gtk_label_set_text (GTK_LABEL (mark), unsoot_job_status_words (status));
    }
  else
    gtk_label_set_text (GTK_LABEL (mark), slug);
  gtk_widget_set_css_classes (mark, classes);
}
