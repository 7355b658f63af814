/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* What a command found or did, told once and shown either way: aligned lines for a person, or
 * JSON for a script. Keys are for scripts and never translated, labels are for people. */
typedef struct _UnsootAnswer UnsootAnswer;

/* Rows under named columns, owned by their answer. */
typedef struct _UnsootAnswerTable UnsootAnswerTable;

/* One value, for scripts and as shown; it is taken by whatever it is put into. */
typedef struct
{
  JsonNode *node;
  char *shown; /* NULL: nothing to show */
} UnsootCell;

typedef struct
{
  const char *key;
  const char *label; /* N_() marked */
  gboolean right;    /* set against the right, as figures are */
} UnsootAnswerColumn;

/* NULL is null, and nothing to show. */
UnsootCell unsoot_cell_text (const char *text);
/* @machine for scripts; takes @shown. */
UnsootCell unsoot_cell_both (const char *machine, char *shown);
/* Takes @shown; NULL shows the number itself. A NAN is null. */
UnsootCell unsoot_cell_int (gint64 number, char *shown);
UnsootCell unsoot_cell_real (double number, char *shown);
UnsootCell unsoot_cell_flag (gboolean flag);
/* null, and nothing to show. */
UnsootCell unsoot_cell_none (void);

UnsootAnswer *unsoot_answer_new (void);
void unsoot_answer_free (UnsootAnswer *answer);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootAnswer, unsoot_answer_free)

/* A sentence about what was done; takes @sentence. Several become lines of one "message". */
void unsoot_answer_say (UnsootAnswer *answer, char *sentence);

void unsoot_answer_put (UnsootAnswer *answer, const char *key, const char *label, UnsootCell cell);

/* @sentences: (nullable): of char *, copied. */
void unsoot_answer_list (UnsootAnswer *answer, const char *key, const char *label,
                         GPtrArray *sentences);

/* Lines that are set as they are, for people only: what scripts have under another key. */
void unsoot_answer_drawing (UnsootAnswer *answer, const char *text);

/* @columns: static, ended by a NULL key. A table without rows is shown by its label and "none". */
UnsootAnswerTable *unsoot_answer_table (UnsootAnswer *answer, const char *key, const char *label,
                                        const UnsootAnswerColumn *columns);

/* The next cell; after the last column a new row begins. */
void unsoot_answer_cell (UnsootAnswerTable *table, UnsootCell cell);

/* Free them. Both end with a line's end where there is anything at all. */
char *unsoot_answer_to_text (UnsootAnswer *answer);
char *unsoot_answer_to_json (UnsootAnswer *answer);

G_END_DECLS
