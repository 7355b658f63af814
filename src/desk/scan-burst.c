/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scan-burst.h"

#include <string.h>

enum
{
  FASTEST_FINGER_MS = 45, /* between two letters; keyboard wedges send one every 1 to 20 ms */
  CLOSING_MS = 250,       /* until Return: nobody types four letters that fast */
  SLOWEST_SCANNER_MS = 1000,
  SHORTEST = 4
};

static guint32
longest_pause (const UnsootScanBurst *self)
{
  return self->no_field ? SLOWEST_SCANNER_MS : FASTEST_FINGER_MS;
}

gboolean
unsoot_scan_burst_is_idle (const UnsootScanBurst *self, guint32 when)
{
  return self->length == 0 || when - self->last > longest_pause (self);
}

void
unsoot_scan_burst_letter (UnsootScanBurst *self, gunichar letter, guint32 when)
{
  char bytes[6];
  const gsize n = (gsize) g_unichar_to_utf8 (letter, bytes);

  if (unsoot_scan_burst_is_idle (self, when))
    self->length = 0;
  if (self->length + n < sizeof self->text)
    {
      memcpy (self->text + self->length, bytes, n);
      self->length += n;
    }
  self->last = when;
}

char *
unsoot_scan_burst_return (UnsootScanBurst *self, guint32 when)
{
  const guint32 closing = MAX (longest_pause (self), CLOSING_MS);
  const gsize shortest = self->no_field ? 1 : SHORTEST;
  const gboolean fast = self->length > 0 && when - self->last <= closing;
  char *text = fast && self->length >= shortest ? g_strndup (self->text, self->length) : NULL;

  self->length = 0;
  return text;
}
