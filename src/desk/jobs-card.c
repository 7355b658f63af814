/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "jobs-card.h"

#include <glib/gi18n-lib.h>

#include "job-link.h"
#include "link-row.h"

void
unsoot_jobs_card_fill (UnsootCard *card, GPtrArray *jobs, UnsootSession *session,
                       const char *nothing)
{
  GtkWidget *list;

  unsoot_card_clear (card);
  if (jobs->len == 0)
    {
      unsoot_card_say (card, nothing);
      return;
    }
  list = unsoot_link_list_new (_ ("Jobs"));
  for (guint i = 0; i < jobs->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_job_link_new (g_ptr_array_index (jobs, i), session, TRUE));
  gtk_box_append (GTK_BOX (card), list);
}
