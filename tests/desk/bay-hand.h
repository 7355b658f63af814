/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bay-card.h"
#include "desk-hand.h"

/* The demo shop's waiting vehicle in the bay, carried through its steps by the card's own buttons;
 * what was stored is read by another handle. */

#define BAY_RUN "(SELECT max (id) FROM runs)"
#define BAY_LAST_EVENT " FROM run_events WHERE run_id = " BAY_RUN " ORDER BY seq DESC LIMIT 1"

typedef struct
{
  UnsootSession *session;
  UnsootWindow *window;
  UnsootBayCard *card;
  gint64 run_id;
  char *key; /* of what was asked before */
  int width; /* of the window; 0: its own size */
  int height;
} Bay;

/* A technician sits down at the desk; begins the run, and has its first step on the screen. */
void bay_sit (Bay *bay);
void bay_open (Bay *bay);
void bay_close (Bay *bay);

/* The number that @sql gives, to a thousandth; how many events the run has. */
double bay_book (const char *sql);
int bay_events (void);

/* A part of the card, by its name in the template. */
GtkWidget *bay_part (Bay *bay, const char *id);
/* Presses what can be seen and pressed. */
void bay_press (GtkWidget *button);
/* Where a figure is typed under @root. */
GtkEditable *bay_figure (GtkWidget *root);
/* The button under @root of that label that can be seen; NULL: none. */
GtkWidget *bay_button (GtkWidget *root, const char *label);

/* Whether the step @act on @subject is asked for. */
gboolean bay_asks (Bay *bay, UnsootAct act, UnsootSubject subject);
/* Enters what is usual, confirms, and waits until something else is asked. */
void bay_enter_usual (Bay *bay);
void bay_step_on (Bay *bay);
void bay_go_to (Bay *bay, UnsootAct act, UnsootSubject subject);
/* Waits for the next thing that is asked, after bay_note_asked (). */
void bay_note_asked (Bay *bay);
void bay_wait_next (Bay *bay);

/* Waits until the card refuses with a sentence that contains @words. */
void bay_ck_refused (Bay *bay, const char *words);
