/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"

G_BEGIN_DECLS

/* The commands, a file for each group: arrays ended by an empty name. */
extern const UnsootCommand unsoot_trade_commands[];  /* vin, procedure, dose: no book */
extern const UnsootCommand unsoot_book_commands[];   /* demo, verify, backup */
extern const UnsootCommand unsoot_look_commands[];   /* find, day, job */
extern const UnsootCommand unsoot_quote_commands[];  /* estimate, authorise, decline */
extern const UnsootCommand unsoot_visit_commands[];  /* book, arrive, reading */
extern const UnsootCommand unsoot_check_commands[];  /* check */
extern const UnsootCommand unsoot_run_commands[];    /* run … */
extern const UnsootCommand unsoot_bill_commands[];   /* finish, release, invoice, pay, credit */
extern const UnsootCommand unsoot_stores_commands[]; /* stock, deliver, lend, back */
extern const UnsootCommand unsoot_supply_commands[]; /* order … */
extern const UnsootCommand unsoot_paper_commands[];  /* paper */

/* The command that ARGS (NULL-terminated) begins with, and how many words its name has;
 * NULL: there is none. */
const UnsootCommand *unsoot_command_find (char **args, guint *n_words);

/* Every command with its line; @group: (nullable): only those of it. Free it. */
char *unsoot_command_help (const char *group);

G_END_DECLS
