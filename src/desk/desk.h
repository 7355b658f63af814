/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Opens the window and runs until it is closed. argv is the program's own.
 * --demo opens the invented shop, --file FILE a shop's file; for pictures of the program there
 * are --place NAME, --picture FILE, --size WIDTHxHEIGHT and --dark. Returns the exit status. */
int unsoot_desk_main (int argc, char **argv);
