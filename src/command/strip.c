/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "strip.h"

#include <math.h>
#include <string.h>

#include "civil.h"
#include "shops.h"

#define QUARTER (15 * 60)
#define QUARTERS_AN_HOUR 4
#define QUARTERS_A_DAY 96

char *
unsoot_strip_clock (const UnsootShopRow *shop, gint64 at)
{
  UnsootLocal local = unsoot_local_from_unix (at, unsoot_shop_utc_offset (shop, at));

  return g_strdup_printf ("%02d:%02d", local.hour, local.minute);
}

const char *
unsoot_strip_bay_name (const UnsootDay *day, gint64 bay_id)
{
  for (guint i = 0; i < day->bays->len; i++)
    {
      const UnsootBayRow *bay = day->bays->pdata[i];

      if (bay->id == bay_id)
        return bay->name;
    }
  return NULL;
}

/* The whole hours that hold the opening hours and every block, as quarters since START. */
static void
find_span (const UnsootDay *day, gint64 *start, guint *quarters)
{
  gint64 from = day->opens_at != 0 ? day->opens_at : day->ends_at;
  gint64 to = day->opens_at != 0 ? day->closes_at : day->starts_at;

  for (guint i = 0; i < day->blocks->len; i++)
    {
      const UnsootDayBlock *block = day->blocks->pdata[i];

      from = MIN (from, block->starts_at);
      to = MAX (to, block->ends_at);
    }
  from = MAX (from, day->starts_at);
  to = MIN (to, day->ends_at);
  *start = from - (from - day->starts_at) % 3600;
  *quarters = to > *start ? (guint) ((to - *start + QUARTER - 1) / QUARTER) : 0;
  *quarters = MIN (*quarters, QUARTERS_A_DAY);
}

static void
end_line (GString *strip)
{
  while (strip->len > 0 && strip->str[strip->len - 1] == ' ')
    g_string_truncate (strip, strip->len - 1);
  g_string_append_c (strip, '\n');
}

static void
draw_hours (GString *strip, const UnsootShopRow *shop, gint64 start, guint quarters, int indent)
{
  g_string_append_printf (strip, "%*s", indent, "");
  for (guint i = 0; i < quarters; i += QUARTERS_AN_HOUR)
    {
      gint64 at = start + (gint64) i * QUARTER;

      g_string_append_printf (strip, "%-*d", QUARTERS_AN_HOUR,
                              unsoot_local_from_unix (at, unsoot_shop_utc_offset (shop, at)).hour);
    }
  end_line (strip);
}

/* Quarters that are done are '#', those to come '-', the job's number stands at the front. */
static void
draw_block (char *line, guint quarters, gint64 start, const UnsootDayBlock *block)
{
  gint64 from = CLAMP ((block->starts_at - start) / QUARTER, 0, (gint64) quarters);
  gint64 to = CLAMP ((block->ends_at - start + QUARTER - 1) / QUARTER, from, (gint64) quarters);
  double done = isnan (block->progress) ? 0.0 : block->progress;
  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, block->job_number);

  for (gint64 i = from; i < to; i++)
    line[i] = (double) (i - from) < done * (double) (to - from) ? '#' : '-';
  if (to > from)
    line[from] = '[';
  for (gsize i = 0; number[i] != '\0' && from + 1 + (gint64) i < to; i++)
    line[from + 1 + (gint64) i] = number[i];
}

static void
draw_bay (GString *strip, const UnsootDay *day, const UnsootBayRow *bay, gint64 start,
          guint quarters, int indent)
{
  g_autofree char *line = g_strnfill (quarters, '.');
  int spaces = indent - (int) g_utf8_strlen (bay->name, -1);

  for (guint i = 0; i < day->blocks->len; i++)
    {
      const UnsootDayBlock *block = day->blocks->pdata[i];

      if (block->bay_id == bay->id)
        draw_block (line, quarters, start, block);
    }
  g_string_append_printf (strip, "%s%*s%s\n", bay->name, MAX (spaces, 1), "", line);
}

char *
unsoot_strip_draw (const UnsootShopRow *shop, const UnsootDay *day)
{
  GString *strip = g_string_new (NULL);
  gint64 start = 0;
  guint quarters = 0;
  int indent = 0;

  find_span (day, &start, &quarters);
  if (quarters == 0)
    return g_string_free (strip, FALSE);
  for (guint i = 0; i < day->bays->len; i++)
    indent = MAX (indent,
                  (int) g_utf8_strlen (((const UnsootBayRow *) day->bays->pdata[i])->name, -1) + 2);
  draw_hours (strip, shop, start, quarters, indent);
  for (guint i = 0; i < day->bays->len; i++)
    draw_bay (strip, day, day->bays->pdata[i], start, quarters, indent);
  return g_string_free (strip, FALSE);
}
