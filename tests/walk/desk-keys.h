/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk-kit.h"

/* The window by keyboard alone, and each key only once what it needs is there. */

/* Whether what has the keyboard is called so (its name contains @name). */
gboolean desk_has_keyboard (Desk *desk, const char *name);

/* Waits until it is. */
void desk_wait_keyboard (Desk *desk, const char *name);

/* Waits until the thing called exactly so is there and can be pressed. */
void desk_wait_ready (Desk *desk, AtspiRole role, const char *name);

/* Walks there by Tab, as a person without a mouse does. */
void desk_tab_to (Desk *desk, const char *name);

/* The same backwards. */
void desk_back_to (Desk *desk, const char *name);

/* Walks to the field called so, types @text in place of what stands there, and waits until it
 * stands there. */
void desk_fill (Desk *desk, const char *name, const char *text);

/* On the choice called so, where the keyboard is: takes the entry that is @down further down its list. */
void desk_choose (Desk *desk, const char *name, int down);

/* @name takes the desk with their PIN; the places narrow to their role. */
void desk_change_hands (Desk *desk, const char *name, const char *pin);

/* Opens the job, the invoice of that number by the find box. */
void desk_open_job (Desk *desk, const char *number);
void desk_open_invoice (Desk *desk, const char *number);
