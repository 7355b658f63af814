/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk-kit.h"

/* The bay's one main button, pressed again and again as a technician does. */

/* Enters what the step asks for before its button is pressed. */
typedef void (*BayEnter) (Desk *desk, const char *deed, gpointer data);

/* What is asked for and has no proposal: the oil is as it was, a note says "steady". */
void bay_enter_usual (Desk *desk, const char *deed, gpointer data);

/* What the main button says now: the verb and the step. */
char *bay_deed_of (Desk *desk);

/* Step after step until the main button says @wanted; how often it was pressed. */
int bay_carry (Desk *desk, const char *wanted, BayEnter enter, gpointer data);
