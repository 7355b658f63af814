/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-customer-report.h"

#include <glib/gi18n-lib.h>

#include "dose.h"
#include "first-drive.h"
#include "page-block.h"
#include "page-table.h"
#include "paper-cautions.h"
#include "paper-error.h"
#include "paper-facts.h"
#include "paper-photos.h"
#include "paper-readings.h"
#include "paper-sides.h"
#include "paper-words.h"
#include "run.h"
#include "unit.h"

/* What was taken out of a lot for this job, in mL: uses less what was put back. */
static gint64
used_ml (const UnsootJobFile *file, const UnsootLotRow *lot)
{
  gint64 ml = 0;

  for (guint i = 0; lot != NULL && i < file->stock_moves->len; i++)
    {
      const UnsootStockMoveRow *move = g_ptr_array_index (file->stock_moves, i);
      if (move->lot_id == lot->id)
        ml -= move->ml;
    }
  return ml;
}

static char *
side_words (const UnsootJobFile *file, const UnsootPaperSide *side)
{
  const gint64 used = used_ml (file, side->lot);
  g_autofree char *volume = unsoot_dose_volume_words (used > 0 ? used : side->dose_ml);
  const char *fluid = side->fluid != NULL ? side->fluid->name : _ ("cleaner");

  if (side->lot != NULL)
    /* Translators: a volume, a fluid's name, its lot */
    return g_strdup_printf (_ ("Cleaned with %s of %s, lot %s."), volume, fluid, side->lot->code);
  return g_strdup_printf (_ ("Cleaned with %s of %s."), volume, fluid);
}

/* The clock at which the last step of a phase was done; NULL: none was. */
static char *
phase_done (const UnsootJobFile *file, gint64 phase)
{
  gint64 at = 0;

  for (guint i = 0; i < file->run_events->len; i++)
    {
      const UnsootRunEventRow *event = g_ptr_array_index (file->run_events, i);
      UnsootRunEventKind kind;

      if (event->step < 0 || event->step >= file->steps->len
          || !unsoot_run_event_from_slug (event->kind, &kind)
          || (kind != UNSOOT_RUN_CONFIRM && kind != UNSOOT_RUN_ENDED))
        continue;
      if (((UnsootStepRow *) g_ptr_array_index (file->steps, event->step))->phase == phase)
        at = MAX (at, event->done_at);
    }
  return unsoot_paper_clock (file, at);
}

static void
draw_phases (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootColumn columns[] = {
    { NULL, 10, UNSOOT_ALIGN_LEFT },
    { _ ("Work"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("Done at"), 70, UNSOOT_ALIGN_RIGHT },
  };
  UnsootTable table;

  if (file->phases->len == 0)
    return;
  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < file->phases->len; i++)
    {
      const UnsootPhaseRow *phase = g_ptr_array_index (file->phases, i);
      g_autofree char *clock = phase_done (file, phase->position);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TICK, .text = clock },
        { UNSOOT_CELL_TEXT, .text = phase->title },
        { UNSOOT_CELL_TEXT, .text = clock != NULL ? clock : _ ("not done") },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static void
draw_sides (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootColumn columns[] = {
    { NULL, 11, UNSOOT_ALIGN_LEFT },
    { NULL, 90, UNSOOT_ALIGN_LEFT },
    { NULL, -1, UNSOOT_ALIGN_LEFT },
  };
  UnsootPaperSide sides[2];
  const guint count = unsoot_paper_sides (file, sides);
  UnsootTable table;

  if (count == 0)
    return;
  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), FALSE);
  for (guint i = 0; i < count; i++)
    {
      g_autofree char *words = side_words (file, &sides[i]);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_SIDE, .side = sides[i].side },
        { UNSOOT_CELL_TEXT, .text = unsoot_side_label (sides[i].side),
          .style = &unsoot_text_body_bold },
        { UNSOOT_CELL_TEXT, .text = words },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static char *
run_words (const UnsootJobFile *file)
{
  g_autofree char *from = unsoot_paper_moment (file, file->run->began_at);
  g_autofree char *to = unsoot_paper_clock (file, file->run->ended_at);

  return unsoot_paper_join ("–", from != NULL ? from : "", to != NULL ? to : "", NULL);
}

static void
draw_done (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autofree char *when = run_words (file);
  const UnsootFact facts[] = {
    { _ ("When"), when, NULL },
    { _ ("Technician"), file->technician != NULL ? file->technician->name : NULL, NULL },
    { _ ("Signed off by"), file->run->signature, NULL },
  };

  unsoot_page_heading (kit, _ ("What was done"), 60);
  unsoot_page_facts (kit, facts, G_N_ELEMENTS (facts), 3);
  draw_sides (kit, file);
  draw_phases (kit, file);
}

/* In the unit that the vehicle's own meter shows. */
static char *
distance_words (const UnsootJobFile *file)
{
  UnsootUnit unit = UNSOOT_UNIT_MI;
  g_autofree char *figure = NULL;

  for (guint i = 0; i < file->meters->len; i++)
    {
      const UnsootMeterReadingRow *meter = g_ptr_array_index (file->meters, i);
      if (g_strcmp0 (meter->unit, "km") == 0)
        unit = UNSOOT_UNIT_KM;
    }
  if (file->job->next_due_metres <= 0)
    return NULL;
  figure = unsoot_paper_whole (
      (gint64) (unsoot_unit_from_si (unit, (double) file->job->next_due_metres) + 0.5));
  /* Translators: a figure of the odometer, its unit */
  return g_strdup_printf (_ ("at %s\u00A0%s"), figure, unsoot_unit_symbol (unit));
}

static void
draw_next (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autofree char *day = unsoot_paper_day (file->job->next_due_on);
  g_autofree char *distance = distance_words (file);
  g_autofree char *when
      = day != NULL && distance != NULL
            /* Translators: a day, "at 120 000 mi" */
            ? g_strdup_printf (_ ("%s or %s, whichever comes first"), day, distance)
            : g_strdup (day != NULL ? day : distance);
  const UnsootFact fact = { _ ("Next service"), when, file->job->next_due_reason };

  if (when == NULL)
    return;
  unsoot_page_heading (kit, _ ("What comes next"), 40);
  unsoot_page_facts (kit, &fact, 1, 1);
}

static void
draw_first_drive (UnsootPageKit *kit)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new ();
  const UnsootNotice notice = { UNSOOT_NOTICE_CAUTION, _ ("The first drive"), sentences, NULL };
  const char *line;

  for (guint i = 0; (line = unsoot_first_drive_line (i)) != NULL; i++)
    g_ptr_array_add (sentences, (gpointer) line);
  g_ptr_array_add (sentences, (gpointer) unsoot_caution_closing ());
  unsoot_page_skip (kit, 9);
  unsoot_page_notice (kit, &notice);
}

GBytes *
unsoot_paper_customer_report (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                              GError **error)
{
  g_autoptr (UnsootPageKit) kit = NULL;

  if (!unsoot_paper_check (file, error))
    return NULL;
  if (file->run == NULL)
    {
      g_autofree char *number = unsoot_paper_serial (file->job->number);
      g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_RECORD,
                   /* Translators: a job's number */
                   _ ("Job %s has not been run, so there is nothing to report yet."), number);
      return NULL;
    }
  const gint64 at = MAX (file->run->began_at, file->run->ended_at);
  kit = unsoot_page_kit_new (size,
                             unsoot_paper_head (file, g_strdup (_ ("Service report")), NULL,
                                                unsoot_paper_moment_day (file, at), at),
                             error);
  if (kit == NULL)
    return NULL;
  unsoot_paper_facts_of_job (kit, file);
  draw_done (kit, file);
  unsoot_paper_readings_shown (kit, file);
  unsoot_paper_photos (kit, file);
  draw_next (kit, file);
  draw_first_drive (kit);
  unsoot_page_paragraph (kit, &unsoot_text_small, file->shop->soot_note);
  return unsoot_page_kit_finish (kit, remark, error);
}
