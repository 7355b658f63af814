/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-sides.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "dose.h"
#include "page-draw.h"
#include "page-mark.h"
#include "page-text.h"
#include "paper-words.h"
#include "unit.h"

#define GAP 12.0
#define BAND 5.0
#define PAD 9.0
#define MARK 20.0

static const UnsootTextStyle dose_style = { 17, 22, TRUE, &unsoot_tone_ink };

guint
unsoot_paper_sides (const UnsootJobFile *file, UnsootPaperSide sides[2])
{
  guint count = 0;

  if (file->job->fuel_dose_ml > 0)
    sides[count++] = (UnsootPaperSide){ UNSOOT_SIDE_FUEL, file->job->fuel_dose_ml, file->fuel_fluid,
                                        file->fuel_lot };
  if (file->job->intake_dose_ml > 0)
    sides[count++] = (UnsootPaperSide){ UNSOOT_SIDE_INTAKE, file->job->intake_dose_ml,
                                        file->intake_fluid, file->intake_lot };
  return count;
}

static char *
fluid_words (const UnsootPaperSide *side)
{
  if (side->fluid == NULL)
    return NULL;
  /* Many a fluid is called by its code already: "Intake fluid R". */
  if (side->fluid->code == NULL || g_str_has_suffix (side->fluid->name, side->fluid->code))
    return g_strdup (side->fluid->name);
  return g_strdup_printf ("%s (%s)", side->fluid->name, side->fluid->code);
}

static char *
lot_words (const UnsootPaperSide *side)
{
  g_autofree char *day = side->lot != NULL ? unsoot_paper_day (side->lot->expires_on) : NULL;

  if (side->lot == NULL)
    return g_strdup (_ ("Lot: ____________________"));
  if (day == NULL)
    return g_strdup_printf (_ ("Lot %s"), side->lot->code);
  /* Translators: the lot's code, its expiry */
  return g_strdup_printf (_ ("Lot %s, good until %s"), side->lot->code, day);
}

static char *
window_words (const UnsootJobFile *file)
{
  const UnsootFamilyRow *family = file->family;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (family == NULL || !isfinite (family->window_min_pa) || !isfinite (family->window_max_pa))
    return g_strdup (_ ("Supply pressure: none entered for this family; don't run it."));
  low = unsoot_paper_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, family->window_min_pa), 1);
  high = unsoot_paper_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, family->window_max_pa), 1);
  /* Translators: lowest and highest supply pressure with the engine running, in psi */
  return g_strdup_printf (_ ("Supply pressure while running: %s to %s\u00A0psi"), low, high);
}

typedef struct
{
  const UnsootJobFile *file;
  gboolean for_work;
  UnsootPaperSide sides[2];
  guint count;
  char **reasons; /* a line for each side; NULL: they are not told side by side */
} Panels;

static double
write_note (UnsootPageKit *kit, const UnsootTextStyle *style, double x, double y, double width,
            char *text)
{
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, style, text, width);

  g_free (text);
  return unsoot_page_write_lines (kit, style, UNSOOT_ALIGN_LEFT, x, y, lines);
}

static char *
why_words (const char *reason)
{
  /* Translators: how a dose was reasoned: "1 L: class 3, one-ton" */
  return g_strdup_printf (_ ("Why this much: %s"), reason);
}

/* Writes one panel's text and gives its height. */
static double
write_panel (UnsootPageKit *kit, const Panels *panels, guint index, double x, double width)
{
  const UnsootPaperSide *side = &panels->sides[index];
  const UnsootTextStyle name = { 11, 15, TRUE, unsoot_page_side_tone (side->side) };
  const double text = x + BAND + PAD + MARK + 8;
  const double room = width - (text - x) - PAD;
  g_autofree char *dose = unsoot_dose_volume_words (side->dose_ml);
  double y = kit->y + PAD - 2;

  unsoot_page_side_mark (kit, side->side, x + BAND + PAD, kit->y + PAD, MARK);
  unsoot_page_write (kit, &dose_style, UNSOOT_ALIGN_RIGHT, x + width - PAD,
                     y + unsoot_text_baseline (&dose_style), dose);
  y += write_note (kit, &name, text, y + 3, room - 60, g_strdup (unsoot_side_label (side->side)));
  y += 4 + write_note (kit, &unsoot_text_body, text, y + 4, room, fluid_words (side));
  if (panels->reasons != NULL)
    y += write_note (kit, &unsoot_text_small, text, y, room, why_words (panels->reasons[index]));
  if (panels->for_work)
    {
      y += write_note (kit, &unsoot_text_small, text, y, room, lot_words (side));
      if (side->side == UNSOOT_SIDE_FUEL)
        y += write_note (kit, &unsoot_text_small, text, y, room, window_words (panels->file));
    }
  return y - kit->y + PAD - 2;
}

static void
draw_panels (UnsootPageKit *kit, gconstpointer data)
{
  const Panels *panels = data;
  const double width = (unsoot_page_width (kit) - GAP) / 2.0;
  double height = 0;

  kit->measuring++;
  for (guint i = 0; i < panels->count; i++)
    height = MAX (height, write_panel (kit, panels, i, kit->left, width));
  kit->measuring--;
  for (guint i = 0; i < panels->count; i++)
    {
      const double x = kit->left + i * (width + GAP);

      unsoot_page_box (kit, x, kit->y, width, height, 0, NULL, &unsoot_tone_rule, 0.6);
      unsoot_page_side_band (kit, panels->sides[i].side, x, kit->y, BAND, height);
      write_panel (kit, panels, i, x, width);
    }
  kit->y += height + 6;
}

void
unsoot_paper_sides_draw (UnsootPageKit *kit, const UnsootJobFile *file, gboolean for_work)
{
  Panels panels = { .file = file, .for_work = for_work };
  const char *reason = file->job->dose_reason;
  g_auto (GStrv) lines = g_strsplit (reason != NULL ? reason : "", "\n", -1);

  panels.count = unsoot_paper_sides (file, panels.sides);
  if (panels.count == 0)
    return;
  if (g_strv_length (lines) == panels.count)
    panels.reasons = lines;
  unsoot_page_keep (kit, draw_panels, &panels, 0);
  if (panels.reasons == NULL && lines[0] != NULL)
    {
      g_autofree char *text = why_words (reason);
      unsoot_page_paragraph (kit, &unsoot_text_small, text);
    }
  kit->y += 6;
}
