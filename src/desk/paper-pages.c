/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-pages.h"

#include <math.h>
#include <poppler.h>

typedef struct
{
  GBytes *pdf;
  double scale;
} Work;

static void
work_free (gpointer data)
{
  Work *work = data;

  g_bytes_unref (work->pdf);
  g_free (work);
}

void
unsoot_paper_page_free (UnsootPaperPage *page)
{
  g_clear_object (&page->picture);
  g_free (page->words);
  g_free (page);
}

/* Cairo's pixels are the machine's own words, which is what GDK calls the default. */
static GdkTexture *
texture_of (cairo_surface_t *surface)
{
  const int width = cairo_image_surface_get_width (surface);
  const int height = cairo_image_surface_get_height (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) pixels = NULL;

  cairo_surface_flush (surface);
  pixels = g_bytes_new_with_free_func (
      cairo_image_surface_get_data (surface), (gsize) stride * (gsize) height,
      (GDestroyNotify) cairo_surface_destroy, cairo_surface_reference (surface));
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, pixels, (gsize) stride);
}

static UnsootPaperPage *
draw (PopplerPage *from, double scale)
{
  UnsootPaperPage *page = g_new0 (UnsootPaperPage, 1);
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cairo;

  poppler_page_get_size (from, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) lround (width * scale),
                                        (int) lround (height * scale));
  cairo = cairo_create (surface);
  cairo_set_source_rgb (cairo, 1, 1, 1);
  cairo_paint (cairo);
  cairo_scale (cairo, scale, scale);
  poppler_page_render (from, cairo);
  page->picture = texture_of (surface);
  page->words = poppler_page_get_text (from);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
  return page;
}

static GPtrArray *
draw_all (PopplerDocument *document, double scale, GCancellable *cancellable)
{
  GPtrArray *pages = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_paper_page_free);
  const int n = poppler_document_get_n_pages (document);

  for (int i = 0; i < n && !g_cancellable_is_cancelled (cancellable); i++)
    {
      PopplerPage *page = poppler_document_get_page (document, i);
      if (page != NULL)
        g_ptr_array_add (pages, draw (page, scale));
      g_clear_object (&page);
    }
  return pages;
}

static void
draw_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Work *work = data;
  GError *error = NULL;
  PopplerDocument *document = poppler_document_new_from_bytes (work->pdf, NULL, &error);

  if (document == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, draw_all (document, work->scale, cancellable),
                           (GDestroyNotify) g_ptr_array_unref);
  g_clear_object (&document);
}

void
unsoot_paper_pages_async (GBytes *pdf, double scale, GCancellable *cancellable,
                          GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Work *work = g_new0 (Work, 1);

  work->pdf = g_bytes_ref (pdf);
  work->scale = scale;
  g_task_set_task_data (task, work, work_free);
  g_task_run_in_thread (task, draw_in_thread);
}

GPtrArray *
unsoot_paper_pages_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
