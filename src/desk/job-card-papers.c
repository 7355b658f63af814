/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "link-row.h"
#include "paper-row.h"
#include "paper-task.h"

static void
add_paper (GtkListBox *list, UnsootJobViewFile *file, UnsootPaper paper)
{
  if (paper != UNSOOT_PAPER_INVOICE)
    {
      gtk_list_box_append (list, unsoot_paper_row_new (file, paper, -1));
      return;
    }
  for (guint i = 0; i < file->file->invoices->len; i++)
    gtk_list_box_append (list, unsoot_paper_row_new (file, paper, (int) i));
}

void
unsoot_job_card_papers (UnsootCard *card, UnsootJobViewFile *file)
{
  GtkWidget *list = unsoot_link_list_new (_ ("Papers"));

  for (int paper = 0; paper < UNSOOT_PAPERS; paper++)
    if (unsoot_paper_task_possible (file->file, (UnsootPaper) paper))
      add_paper (GTK_LIST_BOX (list), file, (UnsootPaper) paper);
  if (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0) != NULL)
    gtk_box_append (GTK_BOX (card), list);
  else
    {
      g_object_ref_sink (list);
      g_object_unref (list);
      unsoot_card_say (card, _ ("None yet: estimate, work order, report and invoice stand here "
                                "once the job has come that far."));
    }
}
