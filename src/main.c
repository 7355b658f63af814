/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <glib/gi18n-lib.h>
#include <locale.h>
#include <stdlib.h>

#include "command.h"
#include "desk.h"

static void
speak_the_persons_language (void)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, UNSOOT_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

static int
print_help (void)
{
  g_print ("%s\n\n"
           "  unsoot                 %s\n"
           "  unsoot --demo          %s\n"
           "  unsoot --file FILE     %s\n"
           "  unsoot COMMAND …       %s\n"
           "  unsoot help            %s\n"
           "  unsoot --version       %s\n",
           _ ("Unsoot, the working book of a shop that cleans diesel fuel systems, intakes and EGR "
              "coolers"),
           _ ("open the shop in a window"), _ ("open an invented shop to try things out"),
           _ ("open the shop that is kept in FILE"), _ ("do the same work without a window"),
           _ ("list the commands"), _ ("print the version"));
  return EXIT_SUCCESS;
}

static int
print_version (void)
{
  g_print ("unsoot %s\n", UNSOOT_VERSION);
  return EXIT_SUCCESS;
}

/* The first word decides: a name is a command, an option or nothing opens the window. */
int
main (int argc, char **argv)
{
  const char *first = argc > 1 ? argv[1] : "";

  speak_the_persons_language ();
  if (g_str_equal (first, "--help") || g_str_equal (first, "-h"))
    return print_help ();
  if (g_str_equal (first, "--version"))
    return print_version ();
  if (first[0] != '\0' && first[0] != '-')
    return unsoot_command_main (argc, argv);
  return unsoot_desk_main (argc, argv);
}
