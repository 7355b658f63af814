/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-statement.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "page-kit.h"
#include "page-table.h"
#include "paper-words.h"

static void
draw_facts (UnsootPageKit *kit, const UnsootStatementFile *file)
{
  g_autofree char *date = unsoot_paper_day (file->date);
  const UnsootFact who[] = { { _ ("Account of"), file->bill_to, NULL } };
  const UnsootFact what[] = {
    { _ ("As of"), date, NULL },
    { _ ("Our tax number"), file->shop->tax_number, NULL },
  };

  unsoot_page_facts (kit, who, G_N_ELEMENTS (who), 2);
  unsoot_page_facts (kit, what, G_N_ELEMENTS (what), 5);
}

static char *
about_of (const UnsootStatementLine *line)
{
  /* Translators: the customer’s own order number */
  g_autofree char *order
      = line->po_number != NULL ? g_strdup_printf (_ ("PO %s"), line->po_number) : NULL;

  return unsoot_paper_join (" · ", line->vehicle != NULL ? line->vehicle : "",
                            order != NULL ? order : "", NULL);
}

static void
draw_line (UnsootTable *table, const UnsootStatementLine *line, const char *currency)
{
  g_autofree char *number = unsoot_paper_serial (line->number);
  g_autofree char *about = about_of (line);
  g_autofree char *issued = unsoot_paper_day (line->issued_on);
  g_autofree char *due = unsoot_paper_day (line->due_on);
  g_autofree char *total = unsoot_paper_money (line->total_minor, currency);
  g_autofree char *less = unsoot_paper_money (-line->paid_minor - line->credited_minor, currency);
  g_autofree char *open = unsoot_paper_money (line->open_minor, currency);
  const UnsootCell cells[] = {
    { UNSOOT_CELL_TEXT, .text = number, .note = about },
    { UNSOOT_CELL_TEXT, .text = issued },
    { UNSOOT_CELL_TEXT, .text = due },
    { UNSOOT_CELL_TEXT, .text = total },
    { UNSOOT_CELL_TEXT, .text = less },
    { UNSOOT_CELL_TEXT, .text = open },
  };

  unsoot_table_row (table, cells);
}

static void
draw_lines (UnsootPageKit *kit, const UnsootStatementFile *file)
{
  const UnsootColumn columns[] = {
    { _ ("Invoice"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("Issued"), 70, UNSOOT_ALIGN_LEFT },
    { _ ("Due"), 70, UNSOOT_ALIGN_LEFT },
    { _ ("Total"), 76, UNSOOT_ALIGN_RIGHT },
    { _ ("Paid, credited"), 84, UNSOOT_ALIGN_RIGHT },
    { _ ("Open"), 76, UNSOOT_ALIGN_RIGHT },
  };
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < file->lines->len; i++)
    draw_line (&table, g_ptr_array_index (file->lines, i), file->shop->currency);
  unsoot_table_end (&table);
}

static void
draw_ages (UnsootPageKit *kit, const UnsootStatementFile *file)
{
  const char *const labels[UNSOOT_AGES + 1]
      = { _ ("Not due yet"),        _ ("1 to 30 days over"), _ ("31 to 60 days over"),
          _ ("61 to 90 days over"), _ ("Over 90 days"),      _ ("To be paid") };
  UnsootFact facts[UNSOOT_AGES + 1];

  for (int age = 0; age <= UNSOOT_AGES; age++)
    facts[age] = (UnsootFact){ labels[age],
                               unsoot_paper_money (age < UNSOOT_AGES ? file->owed.owed[age]
                                                                     : file->owed.total,
                                                   file->shop->currency),
                               NULL };
  unsoot_page_facts (kit, facts, UNSOOT_AGES + 1, UNSOOT_AGES + 1);
  for (int age = 0; age <= UNSOOT_AGES; age++)
    g_free ((char *) facts[age].value);
}

static void
draw_notes (UnsootPageKit *kit, const UnsootStatementFile *file)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  const UnsootNotice notice = { UNSOOT_NOTICE_PLAIN, NULL, sentences, NULL };

  if (file->lines->len == 0)
    g_ptr_array_add (sentences, g_strdup (_ ("Nothing is open. Thank you.")));
  else if (file->shop->payment_note != NULL)
    g_ptr_array_add (sentences, g_strconcat (_ ("How to pay: "), file->shop->payment_note, NULL));
  if (sentences->len > 0)
    unsoot_page_notice (kit, &notice);
}

GBytes *
unsoot_paper_statement (const UnsootStatementFile *file, UnsootPaperSize size, char **remark,
                        GError **error)
{
  g_autoptr (UnsootPageKit) kit
      = unsoot_page_kit_new (size,
                             (UnsootPageHead){ .shop = file->shop,
                                               .title = g_strdup (_ ("Statement of account")),
                                               .number = g_strdup (""),
                                               .subject = g_strdup (file->customer->name),
                                               .date = unsoot_paper_day (file->date),
                                               .at = file->at },
                             error);

  if (kit == NULL)
    return NULL;
  draw_facts (kit, file);
  unsoot_page_skip (kit, 6);
  if (file->lines->len > 0)
    {
      draw_lines (kit, file);
      unsoot_page_skip (kit, 12);
      draw_ages (kit, file);
    }
  draw_notes (kit, file);
  return unsoot_page_kit_finish (kit, remark, error);
}

char *
unsoot_paper_statement_file_name (const UnsootStatementFile *file)
{
  g_autoptr (GString) name = g_string_new ("statement-");
  g_autofree char *plain = g_str_to_ascii (file->customer->name, NULL);

  for (const char *letter = plain; *letter != '\0'; letter++)
    if (g_ascii_isalnum (*letter))
      g_string_append_c (name, g_ascii_tolower (*letter));
    else if (name->str[name->len - 1] != '-')
      g_string_append_c (name, '-');
  g_string_append_printf (name, "%s%s.pdf", name->str[name->len - 1] != '-' ? "-" : "", file->date);
  return g_string_free (g_steal_pointer (&name), FALSE);
}
