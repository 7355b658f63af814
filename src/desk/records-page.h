/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lists.h"
#include "view.h"

G_BEGIN_DECLS

/* A long list of records: read a page at a time as one scrolls, sorted and filtered by the
 * store. A click or Return opens the record. */
#define UNSOOT_TYPE_RECORDS_PAGE (unsoot_records_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (UnsootRecordsPage, unsoot_records_page, UNSOOT, RECORDS_PAGE, UnsootView)

typedef struct
{
  const char *head; /* N_ () */
  gboolean right;   /* numbers */
  gboolean expands;
  gboolean sorts; /* the list's own key: its head turns the order round */
  /* A cell's text, the caller's to free; markup. */
  char *(*text) (gconstpointer line, UnsootSession *session);
  /* For anything else: makes an empty cell, and fills it. */
  GtkWidget *(*make) (void);
  void (*fill) (GtkWidget *cell, gconstpointer line);
} UnsootRecordsColumn;

struct _UnsootRecordsPageClass
{
  UnsootViewClass parent_class;

  const UnsootRecordsColumn *columns;
  gsize n_columns;
  UnsootListOrder order; /* at first */
  const char *opens;     /* slug of the records */
  /* On the worker: one page; @filter is the slug chosen, "" for all. */
  GPtrArray *(*read_page) (UnsootDb *db, const UnsootListPage *page, const char *filter,
                           GError **error);
  GDestroyNotify free_line;
  gint64 (*id) (gconstpointer line);
  /* Where the next page begins. */
  const char *(*after_text) (gconstpointer line);
  gint64 (*after_id) (gconstpointer line);
  /* What a screen reader calls the row; the caller frees it. */
  char *(*name) (gconstpointer line, UnsootSession *session);
  /* What stands there while there is no line at all. */
  const char *empty_icon;
  const char *empty_title;    /* N_ () */
  const char *empty_sentence; /* N_ () */
};

/* Puts a widget beside the title; for a filter. */
void unsoot_records_page_add_tool (UnsootRecordsPage *self, GtkWidget *tool);

/* Puts a widget between the head and the list. */
void unsoot_records_page_add_above (UnsootRecordsPage *self, GtkWidget *widget);

/* Reads the list anew with that filter. */
void unsoot_records_page_set_filter (UnsootRecordsPage *self, const char *filter);

guint unsoot_records_page_get_n_lines (UnsootRecordsPage *self);

G_END_DECLS
