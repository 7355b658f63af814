/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Runs `unsoot COMMAND …`. argv is the program's own: argv[0] its name, argv[1] the command.
 * Returns the exit status: 0 done, 1 refused or failed, 2 not understood. */
int unsoot_command_main (int argc, char **argv);
