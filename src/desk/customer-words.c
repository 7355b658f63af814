/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-words.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

static const UnsootSlug kinds[] = { { 0, "person", N_ ("Person") },
                                    { 1, "business", N_ ("Business") },
                                    { 2, "fleet", N_ ("Fleet") },
                                    { 0, NULL, NULL } };

const char *
unsoot_customer_kind_words (const char *kind)
{
  int value;

  return unsoot_slug_find (kinds, kind, &value) ? unsoot_slug_words (kinds, value) : kind;
}
