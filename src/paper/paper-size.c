/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-size.h"

#include "slug.h"

static const UnsootSlug sizes[] = {
  { UNSOOT_PAPER_LETTER, "letter", "Letter" },
  { UNSOOT_PAPER_A4, "a4", "A4" },
  { 0, NULL, NULL },
};

const char *
unsoot_paper_size_slug (UnsootPaperSize size)
{
  return unsoot_slug_of (sizes, (int) size);
}

gboolean
unsoot_paper_size_find (const char *slug, UnsootPaperSize *size)
{
  int value;

  if (!unsoot_slug_find (sizes, slug, &value))
    return FALSE;
  *size = (UnsootPaperSize) value;
  return TRUE;
}

double
unsoot_paper_size_width (UnsootPaperSize size)
{
  return size == UNSOOT_PAPER_A4 ? 210.0 * 72.0 / 25.4 : 8.5 * 72.0;
}

double
unsoot_paper_size_height (UnsootPaperSize size)
{
  return size == UNSOOT_PAPER_A4 ? 297.0 * 72.0 / 25.4 : 11.0 * 72.0;
}
