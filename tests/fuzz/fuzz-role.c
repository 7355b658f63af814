/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "role.h"
#include "targets.h"

/* One of the closed lists of words, for the reader that all of them share. */
void
fuzz_role (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  GError *error = NULL;
  UnsootRole role = (UnsootRole) -1;

  if (!fuzz_answer (unsoot_role_parse (text, &role, &error), &error))
    {
      FUZZ_CHECK (role == (UnsootRole) -1, "“%s” is refused and taken", text);
      return;
    }
  g_autofree char *plain = g_ascii_strdown (text, -1);
  FUZZ_CHECK (strcmp (g_strstrip (plain), unsoot_role_slug (role)) == 0, "“%s” is %s", text,
              unsoot_role_slug (role));
}
