/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "answer.h"
#include "rows.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* What every command begins and ends with: its options, the shop's book, the acting person, and
 * the answer. */

typedef struct _UnsootCall UnsootCall;

/* What is opened before a command does its work. */
typedef enum
{
  UNSOOT_NEEDS_NOTHING,
  UNSOOT_NEEDS_BOOK,   /* --file */
  UNSOOT_NEEDS_PERSON, /* --file and --as: who acts, whose role decides */
} UnsootNeeds;

/**
 * UnsootCommand:
 * @name: one word, or two where a group has it: "run step"
 * @arguments: N_() marked, what stands behind the options; NULL: nothing
 * @summary: N_() marked, one line
 * @detail: (nullable): N_() marked, more of it, under the options
 * @run: calls unsoot_call_begin() first; FALSE with an error for what was refused
 */
typedef struct
{
  const char *name;
  const char *arguments;
  const char *summary;
  const char *detail;
  UnsootNeeds needs;
  gboolean (*run) (UnsootCall *call, GError **error);
} UnsootCommand;

struct _UnsootCall
{
  const UnsootCommand *command;
  char **args; /* what stands behind the options, once begun */
  guint n_args;
  gboolean json;
  gboolean help;        /* only what the command takes is asked for */
  gboolean tell_anyway; /* the answer is told even where the command failed */
  UnsootAnswer *answer;

  UnsootDb *db;
  UnsootShopRow *shop;
  UnsootActing who;

  char *file;
  char *as;
  char *now;
};

/* The line was not understood: exit status 2, where every other error is 1. */
#define UNSOOT_CALL_ERROR (unsoot_call_error_quark ())
GQuark unsoot_call_error_quark (void);

/* Runs @command with what stands behind its name; the exit status. */
int unsoot_call_run (const UnsootCommand *command, char **args);

/**
 * unsoot_call_begin:
 * @options: (nullable): the command's own, ended by an empty one
 * @least, @most: how many arguments it takes besides
 *
 * Reads the line, then opens what the command needs. FALSE without an error where
 * only help was asked for, which is then told.
 */
gboolean unsoot_call_begin (UnsootCall *call, const GOptionEntry *options, guint least, guint most,
                            GError **error);

/* Opens the book at call->file, or the usual place; for commands that need it only sometimes. */
gboolean unsoot_call_open (UnsootCall *call, GError **error);

/* Sets a usage error; always FALSE. */
gboolean unsoot_call_misused (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* Whether the option @name was given; otherwise a usage error that names it. */
gboolean unsoot_call_wants (const char *value, const char *name, GError **error);

/* Values of the shop's as cells: money, moments (0: none), ISO dates, volumes (0: none). */
UnsootCell unsoot_call_money (UnsootCall *call, gint64 minor);
UnsootCell unsoot_call_moment (UnsootCall *call, gint64 at);
UnsootCell unsoot_call_date (const char *iso);
UnsootCell unsoot_call_volume (gint64 ml);

/* The same as words. Free them. */
char *unsoot_call_money_words (UnsootCall *call, gint64 minor);

/* What was typed: an amount in the shop's currency; a volume, litres where no unit is typed. */
gboolean unsoot_call_read_money (UnsootCall *call, const char *text, gint64 *minor, GError **error);
gboolean unsoot_call_read_volume (const char *text, gint64 *ml, GError **error);

G_END_DECLS
