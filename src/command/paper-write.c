/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-write.h"

#include <glib/gi18n-lib.h>

#include "job-files.h"

static const UnsootInvoiceFile *
invoice_of (const UnsootJobFile *file, gint64 invoice_id)
{
  for (guint i = 0; i < file->invoices->len; i++)
    {
      const UnsootInvoiceFile *invoice = file->invoices->pdata[i];

      if (invoice->invoice->id == invoice_id)
        return invoice;
    }
  return NULL;
}

char *
unsoot_paper_write (UnsootCall *call, UnsootPaper paper, gint64 job_id, gint64 invoice_id,
                    const char *folder, const char *path, char **remark, GError **error)
{
  g_autoptr (UnsootJobFile) file = unsoot_job_file_load (call->db, job_id, error);
  UnsootPaperSize size = UNSOOT_PAPER_LETTER;

  if (file == NULL)
    return NULL;
  unsoot_paper_size_find (call->shop->paper, &size);
  const UnsootInvoiceFile *invoice = invoice_of (file, invoice_id);
  g_autoptr (GBytes) bytes = unsoot_paper_make (paper, file, size, invoice, remark, error);
  if (bytes == NULL)
    return NULL;
  g_autofree char *name = unsoot_paper_file_name (paper, file, invoice);
  g_autofree char *written = path != NULL ? g_strdup (path) : g_build_filename (folder, name, NULL);
  if (!g_file_set_contents_full (written, g_bytes_get_data (bytes, NULL),
                                 (gssize) g_bytes_get_size (bytes), G_FILE_SET_CONTENTS_CONSISTENT,
                                 0600, error))
    return NULL;
  return g_steal_pointer (&written);
}
