/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-task.h"

typedef struct
{
  UnsootJobViewFile *file;
  UnsootPaper paper;
  int invoice;
} Work;

static void
work_free (gpointer data)
{
  Work *work = data;

  unsoot_job_view_file_unref (work->file);
  g_free (work);
}

void
unsoot_paper_made_free (UnsootPaperMade *made)
{
  g_clear_pointer (&made->pdf, g_bytes_unref);
  g_free (made->remark);
  g_free (made);
}

static void
make_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Work *work = data;
  const UnsootJobFile *file = work->file->file;
  g_autoptr (UnsootPaperMade) made = g_new0 (UnsootPaperMade, 1);
  UnsootPaperSize size = UNSOOT_PAPER_LETTER;
  GError *error = NULL;

  unsoot_paper_size_find (file->shop->paper, &size);
  made->pdf = unsoot_paper_make (
      work->paper, file, size,
      work->invoice >= 0 ? g_ptr_array_index (file->invoices, (guint) work->invoice) : NULL,
      &made->remark, &error);
  if (made->pdf == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, g_steal_pointer (&made), (GDestroyNotify) unsoot_paper_made_free);
}

void
unsoot_paper_task_async (UnsootJobViewFile *file, UnsootPaper paper, int invoice,
                         GCancellable *cancellable, GAsyncReadyCallback callback,
                         gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Work *work = g_new0 (Work, 1);

  work->file = unsoot_job_view_file_ref (file);
  work->paper = paper;
  work->invoice = invoice;
  g_task_set_task_data (task, work, work_free);
  g_task_run_in_thread (task, make_in_thread);
}

UnsootPaperMade *
unsoot_paper_task_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

gboolean
unsoot_paper_task_possible (const UnsootJobFile *file, UnsootPaper paper)
{
  switch (paper)
    {
    case UNSOOT_PAPER_ESTIMATE:
      return file->estimates->len > 0;
    case UNSOOT_PAPER_WORK_ORDER:
      return file->procedure != NULL;
    case UNSOOT_PAPER_INVOICE:
      return file->invoices->len > 0;
    case UNSOOT_PAPER_CUSTOMER_REPORT:
      return file->run != NULL && g_strcmp0 (file->run->outcome, "finished") == 0;
    case UNSOOT_PAPER_INCOMPLETE_TAG:
      return file->run != NULL && g_strcmp0 (file->run->outcome, "released") == 0;
    }
  g_return_val_if_reached (FALSE);
}
