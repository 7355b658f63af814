/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-work-order.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "page-table.h"
#include "paper-cautions.h"
#include "paper-facts.h"
#include "paper-hazards.h"
#include "paper-readings.h"
#include "paper-sides.h"
#include "paper-steps.h"
#include "paper-words.h"
#include "stop-page.h"

static char *
when_words (const UnsootJobFile *file)
{
  g_autofree char *from = NULL;
  g_autofree char *to = NULL;

  if (file->booking == NULL)
    return NULL;
  from = unsoot_paper_moment (file, file->booking->starts_at);
  to = unsoot_paper_clock (file, file->booking->ends_at);
  return g_strdup_printf ("%s–%s", from, to);
}

static char *
procedure_words (const UnsootJobFile *file)
{
  const UnsootProcedureRow *procedure = file->procedure;
  g_autofree char *version = NULL;

  if (procedure == NULL)
    return g_strdup (_ ("none yet"));
  version = unsoot_paper_serial (procedure->number);
  /* Translators: the procedure's title and the number of its version */
  return g_strdup_printf (_ ("%s, version %s"), procedure->title, version);
}

static void
draw_facts (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autofree char *when = when_words (file);
  g_autofree char *procedure = procedure_words (file);
  const UnsootFact facts[] = {
    { _ ("When"), when, NULL },
    { _ ("Bay"), file->bay != NULL ? file->bay->name : NULL, NULL },
    { _ ("Machine"), file->machine != NULL ? file->machine->name : NULL, NULL },
    { _ ("Technician"), file->technician != NULL ? file->technician->name : NULL, NULL },
    { _ ("Engine family"), file->family != NULL ? file->family->name : NULL, NULL },
    { _ ("Procedure"), procedure, NULL },
  };

  unsoot_paper_facts_of_job (kit, file);
  unsoot_page_facts (kit, facts, G_N_ELEMENTS (facts), 3);
  if (file->job->note != NULL)
    {
      const UnsootFact note = { _ ("Note"), file->job->note, NULL };
      unsoot_page_facts (kit, &note, 1, 1);
    }
}

/* A procedure that was stopped is not to be run: said before anything else. */
static void
draw_stop_use (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new ();
  const UnsootNotice notice
      = { UNSOOT_NOTICE_DANGER, _ ("Don't run this procedure"), sentences, NULL };

  if (file->procedure == NULL || file->procedure->stop_reason == NULL)
    return;
  g_ptr_array_add (sentences, file->procedure->stop_reason);
  unsoot_page_notice (kit, &notice);
}

static void
draw_adapters (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootColumn columns[] = {
    { NULL, 10, UNSOOT_ALIGN_LEFT },          { NULL, 11, UNSOOT_ALIGN_LEFT },
    { _ ("Adapter"), 70, UNSOOT_ALIGN_LEFT }, { _ ("What it is"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("Bin"), 70, UNSOOT_ALIGN_LEFT },
  };
  UnsootTable table;

  if (file->adapters->len == 0)
    return;
  unsoot_page_heading (kit, _ ("Adapters"), 40);
  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < file->adapters->len; i++)
    {
      const UnsootJobAdapter *adapter = g_ptr_array_index (file->adapters, i);
      const gboolean chosen = adapter->item != NULL;
      UnsootSide side = UNSOOT_SIDE_NONE;

      unsoot_side_from_slug (adapter->type->side, &side);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TICK },
        { UNSOOT_CELL_SIDE, .side = side },
        { UNSOOT_CELL_TEXT, .text = chosen ? adapter->item->label : adapter->type->code,
          .style = &unsoot_text_body_bold },
        { UNSOOT_CELL_TEXT, .text = adapter->type->name, .note = adapter->type->note },
        { UNSOOT_CELL_TEXT, .text = chosen ? adapter->item->bin : _ ("none chosen") },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static const char *
kit_kind_words (const char *kind)
{
  if (g_strcmp0 (kind, "gasket") == 0)
    return _ ("gasket");
  if (g_strcmp0 (kind, "o-ring") == 0)
    return _ ("O-ring");
  return g_strcmp0 (kind, "filter") == 0 ? _ ("filter") : kind;
}

static void
draw_kit (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootColumn columns[] = {
    { NULL, 10, UNSOOT_ALIGN_LEFT },
    { _ ("Quantity"), 50, UNSOOT_ALIGN_RIGHT },
    { _ ("Gaskets, O-rings and filters"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("Kind"), 70, UNSOOT_ALIGN_LEFT },
  };
  UnsootTable table;

  if (file->kit->len == 0)
    return;
  unsoot_page_heading (kit, _ ("Kit"), 40);
  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < file->kit->len; i++)
    {
      const UnsootKitItemRow *item = g_ptr_array_index (file->kit, i);
      g_autofree char *quantity = unsoot_paper_whole (item->quantity);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TICK },
        { UNSOOT_CELL_TEXT, .text = quantity },
        { UNSOOT_CELL_TEXT, .text = item->name },
        { UNSOOT_CELL_TEXT, .text = kit_kind_words (item->kind) },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static GPtrArray *
stop_sentences (UnsootStopPage page)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);
  const char *line;

  for (guint i = 0; (line = unsoot_stop_line (page, i)) != NULL; i++)
    g_ptr_array_add (sentences, g_strdup_printf ("%u. %s", i + 1, line));
  return sentences;
}

static GPtrArray *
lock_sentences (void)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);
  const char *line;

  for (guint i = 0; (line = unsoot_lock_line (i)) != NULL; i++)
    g_ptr_array_add (sentences, g_strdup (line));
  return sentences;
}

static void
draw_stop_pair (UnsootPageKit *kit, UnsootStopPage left, UnsootStopPage right)
{
  g_autoptr (GPtrArray) first = stop_sentences (left);
  g_autoptr (GPtrArray) second = stop_sentences (right);
  const UnsootNotice a = { UNSOOT_NOTICE_DANGER, unsoot_slug_words (unsoot_stop_pages, (int) left),
                           first, unsoot_stop_never (left) };
  const UnsootNotice b = { UNSOOT_NOTICE_DANGER, unsoot_slug_words (unsoot_stop_pages, (int) right),
                           second, unsoot_stop_never (right) };

  unsoot_page_notice_pair (kit, &a, &b);
}

static void
draw_stop (UnsootPageKit *kit)
{
  g_autoptr (GPtrArray) runaway = stop_sentences (UNSOOT_STOP_PAGE_RUNAWAY);
  g_autoptr (GPtrArray) lock = lock_sentences ();
  const UnsootNotice a
      = { UNSOOT_NOTICE_DANGER, unsoot_slug_words (unsoot_stop_pages, UNSOOT_STOP_PAGE_RUNAWAY),
          runaway, unsoot_stop_never (UNSOOT_STOP_PAGE_RUNAWAY) };
  const UnsootNotice b = { UNSOOT_NOTICE_DANGER, _ ("Liquid locks the engine"), lock, NULL };

  unsoot_page_heading (kit, _ ("STOP"), 190);
  unsoot_page_notice_pair (kit, &a, &b);
  draw_stop_pair (kit, UNSOOT_STOP_PAGE_STALLED, UNSOOT_STOP_PAGE_LEAK);
}

static void
draw_hazards (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const char *heading = _ ("Fluids and their hazards");
  UnsootPaperSide sides[2];
  const guint count = unsoot_paper_sides (file, sides);

  for (guint i = 0; i < count; i++)
    if (sides[i].fluid != NULL)
      {
        unsoot_paper_hazards (kit, &sides[i], heading);
        heading = NULL;
      }
}

static void
draw_cautions (UnsootPageKit *kit, gconstpointer data)
{
  const UnsootSide *side = data;

  unsoot_page_heading (kit, _ ("Cautions"), 0);
  unsoot_paper_cautions (kit, UNSOOT_SHEET_WORK_ORDER, *side);
}

static void
draw_readings (UnsootPageKit *kit, gconstpointer data)
{
  unsoot_page_heading (kit, _ ("Readings"), 0);
  unsoot_paper_readings_to_fill (kit, data);
}

static void
draw_signatures (UnsootPageKit *kit, gconstpointer data)
{
  const UnsootJobFile *file = data;
  const UnsootSignLine lines[] = {
    { _ ("Technician"), file->technician != NULL ? file->technician->name : NULL, 2 },
    { _ ("Signature"), NULL, 2.4 },
    { _ ("Date, time"), NULL, 1.4 },
  };

  unsoot_page_heading (kit, _ ("Sign-off"), UNSOOT_PAGE_SIGN_HEIGHT);
  unsoot_page_paragraph (
      kit, &unsoot_text_body,
      _ ("Everything that came off is back on with its new gasket, every tool and guard is off, "
         "everything disabled is enabled, both tanks are accounted for, and the road or load test "
         "is done."));
  unsoot_page_sign (kit, lines, G_N_ELEMENTS (lines));
}

static UnsootSide
only_side (const UnsootJobFile *file)
{
  UnsootPaperSide sides[2];

  return unsoot_paper_sides (file, sides) == 1 ? sides[0].side : UNSOOT_SIDE_NONE;
}

static void
draw_body (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootSide side = only_side (file);

  draw_facts (kit, file);
  draw_stop_use (kit, file);
  unsoot_page_skip (kit, 6);
  unsoot_paper_sides_draw (kit, file, TRUE);
  draw_adapters (kit, file);
  draw_kit (kit, file);
  draw_stop (kit);
  draw_hazards (kit, file);
  unsoot_page_keep (kit, draw_cautions, &side, 0);
  unsoot_page_keep (kit, draw_readings, file, 0);
  unsoot_paper_steps (kit, file);
  unsoot_page_keep (kit, draw_signatures, file, 0);
}

GBytes *
unsoot_paper_work_order (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                         GError **error)
{
  g_autoptr (UnsootPageKit) kit = NULL;
  UnsootPageHead head;
  gint64 at;

  if (!unsoot_paper_check (file, error))
    return NULL;
  at = unsoot_paper_as_of (file);
  head = unsoot_paper_head (file, g_strdup (_ ("Work order")), NULL,
                            unsoot_paper_moment_day (file, at), at);
  head.code = g_strdup (head.number);
  kit = unsoot_page_kit_new (size, head, error);
  if (kit == NULL)
    return NULL;
  draw_body (kit, file);
  return unsoot_page_kit_finish (kit, remark, error);
}
