/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "deed-button.h"
#include "format.h"
#include "paper-readings.h"
#include "path.h"
#include "reading-fields.h"
#include "table.h"

static char *
value_text (UnsootReadingKind kind, const UnsootReadingRow *row)
{
  g_autofree char *text = NULL;

  if (row == NULL)
    return g_strdup ("–");
  text = unsoot_reading_format (kind, row->value);
  return g_markup_escape_text (text, -1);
}

static char *
verdict_text (UnsootVerdict verdict)
{
  switch (verdict)
    {
    case UNSOOT_VERDICT_BETTER:
      return g_strdup (_ ("better"));
    case UNSOOT_VERDICT_WORSE:
      return g_strdup_printf ("<b>%s</b>", _ ("worse"));
    case UNSOOT_VERDICT_NO_CHANGE_SHOWN:
      return g_strdup (_ ("no change shown"));
    case UNSOOT_VERDICT_NO_DIRECTION:
      return g_strdup (_ ("changed"));
    case UNSOOT_VERDICT_NOT_COMPARABLE:
      return g_strdup (_ ("not comparable"));
    }
  g_return_val_if_reached (NULL);
}

static char *
percent_text (const UnsootReadingChange *change)
{
  g_autofree char *number = NULL;

  if (isnan (change->percent) || change->verdict == UNSOOT_VERDICT_NOT_COMPARABLE)
    return g_strdup ("");
  number = unsoot_format_number (change->percent, 0);
  return g_strdup_printf ("%s%s %%", change->percent > 0 ? "+" : "", number);
}

static void
add_pair (GtkWidget *table, const UnsootReadingPair *pair)
{
  const char *name = unsoot_slug_words (unsoot_reading_kinds, (int) pair->kind);
  g_autofree char *before = value_text (pair->kind, pair->before);
  g_autofree char *after = value_text (pair->kind, pair->after);
  g_autofree char *percent = NULL, *verdict = NULL, *sentence = NULL;
  int row;

  if (pair->before != NULL && pair->after != NULL)
    {
      const UnsootReading first = unsoot_paper_reading (pair->before);
      const UnsootReading last = unsoot_paper_reading (pair->after);
      g_auto (UnsootReadingChange) change
          = unsoot_reading_change (pair->kind, &first, &last, &unsoot_alike_usual);
      percent = percent_text (&change);
      verdict = verdict_text (change.verdict);
      sentence = g_strdup (change.sentence);
    }
  const char *const cells[] = { name, before, after, percent, verdict };
  row = unsoot_table_add (UNSOOT_TABLE (table), cells);
  if (sentence != NULL)
    gtk_widget_set_tooltip_text (gtk_grid_get_child_at (GTK_GRID (table), 4, row), sentence);
}

/* A file that stays as long as the button that needs it. */
typedef struct
{
  UnsootJobViewFile *file;
  UnsootSession *session;
} Wanted;

static void
wanted_free (gpointer data, GClosure *closure)
{
  Wanted *wanted = data;

  unsoot_job_view_file_unref (wanted->file);
  g_object_unref (wanted->session);
  g_free (wanted);
}

/* Once the work has begun the next reading is one after it. */
static void
add_cb (GtkWidget *button, const Wanted *wanted)
{
  unsoot_reading_open (button, wanted->session, wanted->file->file,
                       wanted->file->file->run != NULL ? "after" : "before");
}

static void
add_button (UnsootCard *card, UnsootJobViewFile *view, UnsootSession *session)
{
  UnsootJobStatus status = UNSOOT_JOB_PAID;
  Wanted *wanted;
  GtkWidget *button;

  unsoot_job_status_find (view->file->job->status, &status);
  if (status == UNSOOT_JOB_INVOICED || status == UNSOOT_JOB_PAID)
    return;
  wanted = g_new (Wanted, 1);
  *wanted = (Wanted){ unsoot_job_view_file_ref (view), g_object_ref (session) };
  button = unsoot_deed_button_new (session, UNSOOT_DEED_RECORD_READING, _ ("Add a reading…"), NULL);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_data (button, "clicked", G_CALLBACK (add_cb), wanted, wanted_free, 0);
  gtk_box_append (GTK_BOX (card), button);
}

/* What can't be seen by them is said beside them. */
static void
say_limits (UnsootCard *card, const GArray *pairs)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootReadingKind kind = g_array_index (pairs, UnsootReadingPair, i).kind;
      const char *limits = unsoot_reading_facts (kind).limits;
      if (limits != NULL)
        g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n" : "",
                                unsoot_slug_words (unsoot_reading_kinds, (int) kind), limits);
    }
  if (text->len > 0)
    {
      GtkWidget *label = gtk_label_new (text->str);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_widget_add_css_class (label, "caption");
      gtk_widget_add_css_class (label, "dim-label");
      gtk_box_append (GTK_BOX (card), label);
    }
}

void
unsoot_job_card_readings (UnsootCard *card, UnsootJobViewFile *view, UnsootSession *session)
{
  const UnsootTableColumn columns[] = {
    { "", FALSE, TRUE },           { _ ("Before"), TRUE, FALSE }, { _ ("After"), TRUE, FALSE },
    { _ ("Change"), TRUE, FALSE }, { "", FALSE, FALSE },          { NULL },
  };
  g_autoptr (GArray) pairs = unsoot_paper_reading_pairs (view->file);
  GtkWidget *table;

  if (pairs->len == 0)
    {
      unsoot_card_say (card, _ ("None taken yet. Readings before and after show what changed."));
      add_button (card, view, session);
      return;
    }
  table = unsoot_table_new (_ ("Readings"), columns);
  for (guint i = 0; i < pairs->len; i++)
    add_pair (table, &g_array_index (pairs, UnsootReadingPair, i));
  gtk_box_append (GTK_BOX (card), table);
  say_limits (card, pairs);
  add_button (card, view, session);
}
