/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "answer.h"

typedef enum
{
  UNSOOT_ANSWER_VALUE,
  UNSOOT_ANSWER_LIST,
  UNSOOT_ANSWER_DRAWING,
  UNSOOT_ANSWER_TABLE,
} UnsootAnswerKind;

struct _UnsootAnswerTable
{
  const UnsootAnswerColumn *columns;
  guint n_columns;
  GArray *cells; /* UnsootCell, row after row */
};

typedef struct
{
  UnsootAnswerKind kind;
  char *key;
  char *label;
  UnsootCell cell;      /* VALUE; a DRAWING's text is what it shows */
  GPtrArray *sentences; /* LIST: char * */
  UnsootAnswerTable table;
} UnsootAnswerItem;

struct _UnsootAnswer
{
  GString *message;
  GPtrArray *items; /* UnsootAnswerItem */
};
