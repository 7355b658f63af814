/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk-kit.h"

/* A technician in the bay with the real program: the invented shop's waiting vehicle. What was
 * stored is read by SQLite itself. */

/* The run that was begun last. */
#define THE_RUN "(SELECT max (id) FROM runs)"

/* The first value of @sql in that book is @expected. */
void run_holds (const char *book, const char *sql, const char *expected);

/* Waits until something called so is shown, or is no longer. */
void run_is_shown (Desk *desk, const char *name);
void run_is_gone (Desk *desk, const char *name);
void run_press (Desk *desk, const char *name);

/* Ines Farrow, technician, takes the desk. */
Desk *run_technicians_desk (void);

/* What is looked at before the work is another page's: here it is answered by command. */
void run_answer_checks (const char *book, const char *job);

/* The checks are answered; the run begins on the machine that is
 * proposed. */
void run_begin (Desk *desk, const char *book);

/* A scanner types @code. */
void run_scan (const char *code);

/* Step after step until the main button says @wanted. */
void run_go_to (Desk *desk, const char *wanted);
