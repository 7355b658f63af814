/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "jobs-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "format.h"
#include "path.h"
#include "side-mark.h"
#include "status-mark.h"

struct _UnsootJobsPage
{
  UnsootRecordsPage parent_instance;
};

G_DEFINE_FINAL_TYPE (UnsootJobsPage, unsoot_jobs_page, UNSOOT_TYPE_RECORDS_PAGE)

static char *
escape (const char *text)
{
  return g_markup_escape_text (text != NULL ? text : "", -1);
}

static char *
number_text (gconstpointer line, UnsootSession *session)
{
  return g_strdup_printf ("<b>%d</b>", (int) ((const UnsootJobLine *) line)->number);
}

static char *
vehicle_text (gconstpointer line, UnsootSession *session)
{
  return unsoot_format_title_markup (((const UnsootJobLine *) line)->vehicle, FALSE);
}

static char *
customer_text (gconstpointer line, UnsootSession *session)
{
  return escape (((const UnsootJobLine *) line)->customer);
}

static char *
when_text (gconstpointer data, UnsootSession *session)
{
  const UnsootJobLine *line = data;
  const gint64 at = line->starts_at != 0 ? line->starts_at : line->made_at;
  g_autofree char *words
      = unsoot_format_moment_near (at, unsoot_session_now (session), unsoot_session_zone (session));

  return escape (words);
}

static char *
total_text (gconstpointer data, UnsootSession *session)
{
  const UnsootJobLine *line = data;
  g_autofree char *money
      = line->total_minor != 0 ? unsoot_session_money (session, line->total_minor) : NULL;

  return escape (money);
}

static GtkWidget *
make_sides (void)
{
  return gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
}

static void
fill_sides (GtkWidget *cell, gconstpointer line)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (cell)) != NULL)
    gtk_box_remove (GTK_BOX (cell), child);
  unsoot_side_marks_append (GTK_BOX (cell), ((const UnsootJobLine *) line)->sides);
  unsoot_access_name (gtk_widget_get_parent (cell),
                      unsoot_sides_words (((const UnsootJobLine *) line)->sides));
}

/* The longest words stand on two lines: they are rare, and the others want the room. */
static GtkWidget *
make_status (void)
{
  GtkWidget *mark = unsoot_status_mark_new ();

  gtk_label_set_wrap (GTK_LABEL (mark), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (mark), 8);
  return mark;
}

static void
fill_status (GtkWidget *cell, gconstpointer line)
{
  unsoot_status_mark_set (cell, ((const UnsootJobLine *) line)->status);
}

static char *
row_name (gconstpointer data, UnsootSession *session)
{
  const UnsootJobLine *line = data;
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;

  unsoot_job_status_find (line->status, &status);
  /* Translators: a job's number, vehicle, customer and where it stands */
  return g_strdup_printf (_ ("Job %d, %s, %s, %s"), (int) line->number, line->vehicle,
                          line->customer, unsoot_job_status_words (status));
}

static const UnsootRecordsColumn columns[] = {
  { .head = N_ ("Job"), .sorts = TRUE, .text = number_text },
  { .head = N_ ("Vehicle"), .expands = TRUE, .text = vehicle_text },
  { .head = N_ ("Customer"), .expands = TRUE, .text = customer_text },
  { .head = N_ ("Sides"), .make = make_sides, .fill = fill_sides },
  { .head = N_ ("Stands"), .make = make_status, .fill = fill_status },
  { .head = N_ ("When"), .text = when_text },
  { .head = N_ ("Estimate"), .right = TRUE, .text = total_text },
};

static GPtrArray *
read_page (UnsootDb *db, const UnsootListPage *page, const char *filter, GError **error)
{
  return unsoot_job_page (db, page, *filter != '\0' ? filter : NULL, 0, 0, error);
}

static gint64
line_id (gconstpointer line)
{
  return ((const UnsootJobLine *) line)->id;
}

/* The first entry is all of them; then each status in the order of the path. */
static void
filter_cb (GtkDropDown *chooser, GParamSpec *pspec, UnsootRecordsPage *self)
{
  const guint chosen = gtk_drop_down_get_selected (chooser);

  unsoot_records_page_set_filter (
      self, chosen == 0 ? "" : unsoot_job_status_slug ((UnsootJobStatus) (chosen - 1)));
}

static GtkWidget *
filter_new (UnsootRecordsPage *self)
{
  GtkStringList *words = gtk_string_list_new (NULL);
  GtkWidget *chooser;

  gtk_string_list_append (words, _ ("All jobs"));
  for (int status = UNSOOT_JOB_QUOTED; status <= UNSOOT_JOB_STOPPED; status++)
    gtk_string_list_append (words, unsoot_job_status_words ((UnsootJobStatus) status));
  chooser = gtk_drop_down_new (G_LIST_MODEL (words), NULL);
  unsoot_access_name (chooser, _ ("Which jobs"));
  /* The button inside is what has the focus. */
  unsoot_access_name_inside (chooser, _ ("Which jobs"));
  g_signal_connect (chooser, "notify::selected", G_CALLBACK (filter_cb), self);
  return chooser;
}

static void
unsoot_jobs_page_class_init (UnsootJobsPageClass *klass)
{
  UnsootRecordsPageClass *list_class = UNSOOT_RECORDS_PAGE_CLASS (klass);

  list_class->columns = columns;
  list_class->n_columns = G_N_ELEMENTS (columns);
  list_class->order = UNSOOT_LIST_DOWN;
  list_class->opens = "job";
  list_class->read_page = read_page;
  list_class->free_line = (GDestroyNotify) unsoot_job_line_free;
  list_class->id = line_id;
  list_class->after_id = line_id;
  list_class->name = row_name;
  list_class->empty_icon = "unsoot-job-symbolic";
  list_class->empty_title = N_ ("No jobs yet");
  list_class->empty_sentence
      = N_ ("Every job from its estimate to its last payment stands here, the newest at the top.");
}

static void
unsoot_jobs_page_init (UnsootJobsPage *self)
{
  unsoot_records_page_add_tool (UNSOOT_RECORDS_PAGE (self),
                                filter_new (UNSOOT_RECORDS_PAGE (self)));
}
