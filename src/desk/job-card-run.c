/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "drawing-view.h"
#include "run-traces.h"
#include "trace-drawing.h"

enum
{
  WIDTH = 900,
  HEIGHT = 300
};

static UnsootDrawing *
make (gconstpointer data, double width, double height)
{
  const UnsootJobViewFile *file = data;
  g_autofree UnsootTraceLine *lines = g_new (UnsootTraceLine, file->traces->len);

  for (guint i = 0; i < file->traces->len; i++)
    {
      const UnsootRunTrace *trace = g_ptr_array_index (file->traces, i);
      lines[i] = (UnsootTraceLine){ trace->began_at, trace->points };
    }
  return unsoot_trace_drawing_new (lines, file->traces->len, width, height);
}

/* Which earlier runs are thin and grey. */
static char *
against_words (const GPtrArray *traces)
{
  g_autoptr (GString) numbers = g_string_new (NULL);

  if (traces->len < 2)
    return g_strdup (_ ("It is the first of its kind on this engine family."));
  for (guint i = 1; i < traces->len; i++)
    {
      const UnsootRunTrace *trace = g_ptr_array_index (traces, i);
      g_string_append_printf (numbers, "%s%d", i > 1 ? ", " : "", (int) trace->job_number);
    }
  return g_strdup_printf (_ ("Thin and grey: the runs before it on this engine family, jobs %s."),
                          numbers->str);
}

void
unsoot_job_card_run (UnsootCard *card, UnsootJobViewFile *file)
{
  g_autofree char *against = NULL;

  gtk_widget_set_visible (GTK_WIDGET (card), file->traces->len > 0);
  if (file->traces->len == 0)
    return;
  against = against_words (file->traces);
  gtk_box_append (GTK_BOX (card),
                  unsoot_drawing_view_new (_ ("The run"), WIDTH, HEIGHT, make,
                                           unsoot_job_view_file_ref (file),
                                           (GDestroyNotify) unsoot_job_view_file_unref));
  unsoot_card_say (card, against);
}
