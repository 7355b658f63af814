/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "procedure.h"

/* A procedure and its family's facts as plain text, one step a line.
 *
 *   # a note: from '#' at the start of a line to its end; dropped when read
 *   procedure Fuel and intake, adapter at the valve
 *   sides fuel intake                    one or both
 *   family Brindle T4 5.1
 *   lift-pump bypass                     or: unplug (bypass forbidden), none
 *   window 6 to 10 psi                   or: none; units psi, bar, kPa, Pa
 *   egr valve cooler                     or: valve, none
 *   heater yes                           or: no
 *   regeneration yes                     or: no
 *   road yes                             or: no
 *   low-point charge cooler              any number of lines
 *   dose fuel 1000 ml                    none: leave the line out
 *   dose intake 2000 ml
 *
 *   phase Get ready
 *   caution maker chocks                 slugs of UnsootCaution, may be absent
 *   take-off part intake "air hose" new-gasket | Take off the air hose | Why it matters
 *
 * A step is `ACT SUBJECT WORDS | wording | why`; wording and why may be absent.
 * WORDS, each at most once:
 *   fuel, intake        side                  share 0.5      of the dose
 *   NAME                bare slug or "quoted" minutes 25     at most
 *   at PLACE            likewise              low-level      ends at the low mark
 *   with fuel           fluid, of a fill      until-clear    ends when clear
 *   8 psi               value and unit        new-gasket     part needs one
 *   minimum             value 0, no unit      closes         guard shuts its opening
 *
 * A bare slug is a lower-case letter, then letters, digits and hyphens, and none
 * of the words above. Inside quotes, wording and why, a backslash keeps the next
 * character (\" \| \\) and \n is a line's end. */

#define UNSOOT_PROCEDURE_TEXT_ERROR (unsoot_procedure_text_error_quark ())
GQuark unsoot_procedure_text_error_quark (void);

/* Codes are the number of the line, counted from 1, that could not be read; the
 * message names it too. */

/* Reads TEXT. FALSE sets ERROR and leaves *PROCEDURE and *FACTS alone. */
gboolean unsoot_procedure_parse (const char *text, UnsootProcedure **procedure,
                                 UnsootFamilyFacts **facts, GError **error);

/* Reads one step line, without a phase; NULL sets ERROR (code 1). */
UnsootStep *unsoot_step_parse (const char *line, GError **error);

/* The text of a procedure; parsing it again gives equal values, exactly. Free with g_free(). */
char *unsoot_procedure_print (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts);

/* One step line, without its line's end. */
char *unsoot_step_print (const UnsootStep *step);
