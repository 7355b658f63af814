/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "procedure-text.h"
#include "targets.h"

void
fuzz_step (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  GError *error = NULL;
  g_autoptr (UnsootStep) step = unsoot_step_parse (text, &error);

  if (!fuzz_answer (step != NULL, &error))
    return;
  FUZZ_CHECK (unsoot_act_takes (step->act, step->subject), "“%s”", text);
  g_autofree char *line = unsoot_step_print (step);
  g_autofree char *words = unsoot_step_words (step);
  g_autoptr (UnsootStep) copy = unsoot_step_copy (step);
  FUZZ_CHECK (strchr (line, '\n') == NULL, "“%s”", line);
  FUZZ_CHECK (*words != '\0' && g_utf8_validate (words, -1, NULL), "“%s”", words);
  FUZZ_CHECK (unsoot_step_equal (step, copy), "“%s”", line);

  g_autoptr (UnsootStep) again = unsoot_step_parse (line, &error);
  FUZZ_CHECK (again != NULL, "“%s” is printed, not read: %s", line, error->message);
  FUZZ_CHECK (unsoot_step_equal (step, again), "“%s” is another step", line);
}
