/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <glib/gi18n-lib.h>

#include "command.h"

enum
{
  EXIT_NOT_UNDERSTOOD = 2
};

int
unsoot_command_main (int argc, char **argv)
{
  g_return_val_if_fail (argc > 1, EXIT_NOT_UNDERSTOOD);

  g_printerr (_ ("unsoot: there is no command “%s”. “unsoot --help” says what there is.\n"),
              argv[1]);
  return EXIT_NOT_UNDERSTOOD;
}
