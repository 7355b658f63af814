/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-cautions.h"

#include "page-block.h"

GPtrArray *
unsoot_paper_caution_sentences (guint cautions)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);

  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    if (cautions & (1u << i))
      g_ptr_array_add (sentences, g_strdup (unsoot_caution_text ((UnsootCaution) (1u << i))));
  return sentences;
}

guint
unsoot_paper_caution_bits (const char *names, GPtrArray *sentences)
{
  g_auto (GStrv) list = g_strsplit (names != NULL ? names : "", " ", -1);
  guint bits = 0;

  for (guint i = 0; list[i] != NULL; i++)
    {
      UnsootCaution caution;

      if (unsoot_caution_from_slug (list[i], &caution))
        bits |= caution;
      else if (*list[i] != '\0')
        g_ptr_array_add (sentences, g_strdup (list[i]));
    }
  return bits;
}

void
unsoot_paper_cautions (UnsootPageKit *kit, UnsootSheet sheet, UnsootSide side)
{
  const guint cautions = unsoot_caution_sheet (sheet, side) & ~(guint) UNSOOT_CAUTION_MAKER;
  g_autoptr (GPtrArray) sentences = unsoot_paper_caution_sentences (cautions);
  const UnsootNotice notice = { UNSOOT_NOTICE_CAUTION, NULL, sentences, NULL };

  g_ptr_array_add (sentences, g_strdup (unsoot_caution_closing ()));
  unsoot_page_notice (kit, &notice);
}
