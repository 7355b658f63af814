/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#include "commands.h"

enum
{
  EXIT_NOT_UNDERSTOOD = 2
};

static const UnsootCommand *const groups[] = {
  unsoot_trade_commands,  unsoot_book_commands,   unsoot_look_commands,  unsoot_quote_commands,
  unsoot_visit_commands,  unsoot_check_commands,  unsoot_run_commands,   unsoot_bill_commands,
  unsoot_stores_commands, unsoot_supply_commands, unsoot_paper_commands,
};

/* How many words of ARGS are NAME; 0: they are another's. */
static guint
matching_words (const char *name, char **args)
{
  g_auto (GStrv) words = g_strsplit (name, " ", -1);
  guint n = 0;

  for (; words[n] != NULL; n++)
    if (args[n] == NULL || !g_str_equal (words[n], args[n]))
      return 0;
  return n;
}

const UnsootCommand *
unsoot_command_find (char **args, guint *n_words)
{
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    for (const UnsootCommand *command = groups[i]; command->name != NULL; command++)
      if ((*n_words = matching_words (command->name, args)) > 0)
        return command;
  return NULL;
}

static gboolean
is_of_group (const UnsootCommand *command, const char *group)
{
  return group == NULL
         || (g_str_has_prefix (command->name, group) && command->name[strlen (group)] == ' ');
}

static gboolean
is_group (const char *word)
{
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    if (is_of_group (groups[i], word))
      return TRUE;
  return FALSE;
}

char *
unsoot_command_help (const char *group)
{
  GString *help = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    for (const UnsootCommand *command = groups[i]; command->name != NULL; command++)
      if (is_of_group (command, group))
        g_string_append_printf (help, "  %-14s %s\n", command->name, _ (command->summary));
  return g_string_free (help, FALSE);
}

static int
print_help (const char *group)
{
  g_autofree char *list = unsoot_command_help (group);

  g_print (_ ("unsoot COMMAND … does the same work without a window:\n\n%s\n"
              "“unsoot COMMAND --help” says what a command takes.\n"),
           list);
  return EXIT_SUCCESS;
}

static int
help_about (char **words)
{
  static char *help_only[] = { (char *) "--help", NULL };
  guint n_words = 0;
  const UnsootCommand *command = unsoot_command_find (words, &n_words);

  if (command != NULL)
    return unsoot_call_run (command, help_only);
  if (words[0] == NULL || is_group (words[0]))
    return print_help (words[0]);
  g_printerr (_ ("unsoot: there is no command “%s”. “unsoot help” says what there is.\n"),
              words[0]);
  return EXIT_NOT_UNDERSTOOD;
}

int
unsoot_command_main (int argc, char **argv)
{
  guint n_words = 0;
  const UnsootCommand *command;

  g_return_val_if_fail (argc > 1, EXIT_NOT_UNDERSTOOD);

  if (g_str_equal (argv[1], "help"))
    return help_about (argv + 2);
  command = unsoot_command_find (argv + 1, &n_words);
  if (command != NULL)
    return unsoot_call_run (command, argv + 1 + n_words);
  if (is_group (argv[1]) && argv[2] != NULL
      && (g_str_equal (argv[2], "--help") || g_str_equal (argv[2], "-h")))
    return print_help (argv[1]);
  if (is_group (argv[1]))
    g_printerr (_ ("unsoot %s: say what to do. “unsoot help %s” lists it.\n"), argv[1], argv[1]);
  else
    g_printerr (_ ("unsoot: there is no command “%s”. “unsoot help” says what there is.\n"),
                argv[1]);
  return EXIT_NOT_UNDERSTOOD;
}
