/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-print.h"

#include <poppler.h>

static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int number,
              PopplerDocument *document)
{
  PopplerPage *page = poppler_document_get_page (document, number);

  if (page != NULL)
    poppler_page_render_for_printing (page, gtk_print_context_get_cairo_context (context));
  g_clear_object (&page);
}

/* The sheet that the paper was laid out for. */
static GtkPageSetup *
setup_of (PopplerDocument *document)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  PopplerPage *page = poppler_document_get_page (document, 0);
  double width = 0, height = 0;
  GtkPaperSize *size;

  poppler_page_get_size (page, &width, &height);
  g_clear_object (&page);
  /* Letter is 612 points wide, A4 595.276. */
  size = gtk_paper_size_new (width > 604 ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, width > height ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                        : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (size);
  return setup;
}

GtkPrintOperation *
unsoot_paper_print_new (GBytes *pdf, const char *name, GError **error)
{
  PopplerDocument *document = poppler_document_new_from_bytes (pdf, NULL, error);
  g_autoptr (GtkPageSetup) setup = NULL;
  GtkPrintOperation *operation;

  if (document == NULL)
    return NULL;
  operation = gtk_print_operation_new ();
  setup = setup_of (document);
  gtk_print_operation_set_n_pages (operation, poppler_document_get_n_pages (document));
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (draw_page_cb), document,
                         (GClosureNotify) (void (*) (void)) g_object_unref, 0);
  return operation;
}

gboolean
unsoot_paper_print (GtkWindow *over, GBytes *pdf, const char *name, GError **error)
{
  g_autoptr (GtkPrintOperation) operation = unsoot_paper_print_new (pdf, name, error);

  return operation != NULL
         && gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, over,
                                     error)
                != GTK_PRINT_OPERATION_RESULT_ERROR;
}
