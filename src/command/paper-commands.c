/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "invoices.h"
#include "paper-write.h"
#include "pick.h"

static gboolean
read_kind (const char *slug, UnsootPaper *paper, GError **error)
{
  g_autoptr (GString) known = g_string_new (NULL);

  if (unsoot_paper_find (slug, paper))
    return TRUE;
  for (int i = 0; i < UNSOOT_PAPERS; i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "", unsoot_paper_slug ((UnsootPaper) i));
  return unsoot_call_misused (error, _ ("“%s” is none of these: %s."), slug, known->str);
}

static gboolean
pick_invoice_of (UnsootCall *call, const char *number, gint64 job_id, gint64 *id, GError **error)
{
  if (number == NULL)
    return TRUE;
  if (!unsoot_pick_invoice (call, number, id, error))
    return FALSE;
  g_autoptr (UnsootInvoiceFile) file = unsoot_invoice_load (call->db, *id, error);
  if (file == NULL)
    return FALSE;
  return file->invoice->job_id == job_id
         || unsoot_call_misused (error, _ ("Invoice %s is not one of job %s."), number,
                                 call->args[1]);
}

static gboolean
run_paper (UnsootCall *call, GError **error)
{
  g_autofree char *output = NULL, *number = NULL, *remark = NULL;
  UnsootPaper paper = UNSOOT_PAPER_ESTIMATE;
  gint64 job_id = 0, invoice_id = 0;
  const GOptionEntry options[]
      = { { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output,
            N_ ("Where to; without it, here under the paper's own name"), N_ ("FILE") },
          { "invoice", 'i', 0, G_OPTION_ARG_STRING, &number,
            N_ ("Which invoice or credit note; without it, the latest"), N_ ("NUMBER") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 2, 2, error) || !read_kind (call->args[0], &paper, error)
      || !unsoot_pick_job (call, call->args[1], &job_id, error)
      || !pick_invoice_of (call, number, job_id, &invoice_id, error))
    return FALSE;
  g_autofree char *written
      = unsoot_paper_write (call, paper, job_id, invoice_id, ".", output, &remark, error);
  if (written == NULL)
    return FALSE;
  g_autofree char *shown = g_filename_display_name (written);
  unsoot_answer_put (call->answer, "paper", unsoot_paper_title (paper),
                     unsoot_cell_both (shown, g_strdup (shown)));
  unsoot_answer_put (call->answer, "remark", _ ("Remark"), unsoot_cell_text (remark));
  return TRUE;
}

const UnsootCommand unsoot_paper_commands[] = {
  { "paper", N_ ("KIND JOB"), N_ ("Print a paper about a job to a PDF file"),
    N_ ("KIND is estimate, work-order, invoice, customer-report or incomplete-tag."),
    UNSOOT_NEEDS_BOOK, run_paper },
  { NULL },
};
