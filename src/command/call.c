/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "call.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <stdlib.h>

#include "migrate.h"
#include "place.h"
#include "shops.h"
#include "staff.h"
#include "when.h"

enum
{
  EXIT_MISUSED = 2
};

G_DEFINE_QUARK (unsoot - call - error - quark, unsoot_call_error)

gboolean
unsoot_call_misused (GError **error, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, UNSOOT_CALL_ERROR, 0, sentence);
  return FALSE;
}

gboolean
unsoot_call_wants (const char *value, const char *name, GError **error)
{
  if (value != NULL && *value != '\0')
    return TRUE;
  /* Translators: an option, such as --reason */
  return unsoot_call_misused (error, _ ("%s has to be given."), name);
}

static GOptionContext *
new_context (UnsootCall *call, const GOptionEntry *options)
{
  const GOptionEntry common[] = {
    { "help", 'h', 0, G_OPTION_ARG_NONE, &call->help, N_ ("Show what the command takes"), NULL },
    { "json", 0, 0, G_OPTION_ARG_NONE, &call->json, N_ ("Answer in JSON, for scripts"), NULL },
    { NULL }
  };
  const GOptionEntry book[]
      = { { "file", 'f', 0, G_OPTION_ARG_FILENAME, &call->file,
            N_ ("The shop's book; without it, the one in your own data folder"), N_ ("FILE") },
          { "now", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, &call->now, NULL, NULL },
          { NULL } };
  const GOptionEntry person[]
      = { { "as", 'a', 0, G_OPTION_ARG_STRING, &call->as,
            N_ ("Who acts, by initials or name: the role decides"), N_ ("INITIALS") },
          { NULL } };
  const char *arguments = call->command->arguments;
  GOptionContext *context = g_option_context_new (arguments != NULL ? _ (arguments) : NULL);

  if (options != NULL)
    g_option_context_add_main_entries (context, options, GETTEXT_PACKAGE);
  if (call->command->needs == UNSOOT_NEEDS_PERSON)
    g_option_context_add_main_entries (context, person, GETTEXT_PACKAGE);
  if (call->command->needs != UNSOOT_NEEDS_NOTHING)
    g_option_context_add_main_entries (context, book, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, common, GETTEXT_PACKAGE);
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, _ (call->command->summary));
  if (call->command->detail != NULL)
    g_option_context_set_description (context, _ (call->command->detail));
  return context;
}

static gboolean
check_arguments (const UnsootCall *call, guint least, guint most, GError **error)
{
  const char *arguments = call->command->arguments;

  for (guint i = 0; i < call->n_args; i++)
    if (!g_utf8_validate (call->args[i], -1, NULL))
      return unsoot_call_misused (error, _ ("Argument %u is not UTF-8 text."), i + 1);
  if (call->n_args < least)
    /* Translators: what has to be given, as in "JOB --reason TEXT" */
    return unsoot_call_misused (error, _ ("Something is missing: %s."),
                                arguments != NULL ? _ (arguments) : "");
  if (call->n_args > most)
    return unsoot_call_misused (error, _ ("“%s” is one too many."), call->args[most]);
  return TRUE;
}

static void
drop (char **words, guint index)
{
  g_free (words[index]);
  for (; words[index] != NULL; index++)
    words[index] = words[index + 1];
}

/* What is left of the line are the arguments. */
static gboolean
read_line (UnsootCall *call, const GOptionEntry *options, GError **error)
{
  g_autoptr (GOptionContext) context = new_context (call, options);
  g_autoptr (GError) fault = NULL;

  if (!g_option_context_parse_strv (context, &call->args, &fault))
    return unsoot_call_misused (error, "%s", fault->message);
  if (call->help)
    {
      g_autofree char *help = g_option_context_get_help (context, TRUE, NULL);
      g_print ("%s", help);
      return FALSE;
    }
  drop (call->args, 0);
  /* GOption leaves the dashes that end the options where arguments with a dash follow. */
  for (guint i = 0; call->args[i] != NULL; i++)
    if (g_str_equal (call->args[i], "--"))
      {
        drop (call->args, i);
        break;
      }
  call->n_args = g_strv_length (call->args);
  return TRUE;
}

/* A hidden option of the tests stops the clock. */
static gboolean
read_now (UnsootCall *call, GError **error)
{
  if (call->now != NULL)
    return unsoot_when_absolute (call->now, &call->who.now, error);
  call->who.now = g_get_real_time () / G_USEC_PER_SEC;
  return TRUE;
}

gboolean
unsoot_call_open (UnsootCall *call, GError **error)
{
  g_autofree char *usual = unsoot_place_usual ();

  call->db = unsoot_db_open (call->file != NULL ? call->file : usual, 0, error);
  if (call->db == NULL || !unsoot_migrate (call->db, call->who.now, error))
    return FALSE;
  call->shop = unsoot_shop_load (call->db, error);
  return call->shop != NULL;
}

static gboolean
find_person (UnsootCall *call, GError **error)
{
  g_autoptr (UnsootStaffRow) person = unsoot_staff_find (call->db, call->as, error);

  if (person == NULL)
    return FALSE;
  call->who.staff_id = person->id;
  return TRUE;
}

gboolean
unsoot_call_begin (UnsootCall *call, const GOptionEntry *options, guint least, guint most,
                   GError **error)
{
  UnsootNeeds needs = call->command->needs;

  if (!read_line (call, options, error) || !check_arguments (call, least, most, error))
    return FALSE;
  if (needs == UNSOOT_NEEDS_PERSON && !unsoot_call_wants (call->as, "--as", error))
    return FALSE;
  return read_now (call, error) && (needs == UNSOOT_NEEDS_NOTHING || unsoot_call_open (call, error))
         && (needs != UNSOOT_NEEDS_PERSON || find_person (call, error));
}

/* JSON is UTF-8 whatever the locale; for people it is put into theirs. */
static gboolean
tell (UnsootCall *call)
{
  g_autofree char *text
      = call->json ? unsoot_answer_to_json (call->answer) : unsoot_answer_to_text (call->answer);

  if (call->json)
    fputs (text, stdout);
  else
    g_print ("%s", text);
  if (fflush (stdout) == 0 && !ferror (stdout))
    return TRUE;
  g_printerr (_ ("unsoot: the answer could not be written.\n"));
  return FALSE;
}

static int
close_call (UnsootCall *call, gboolean done, const GError *error)
{
  gboolean misused = g_error_matches (error, UNSOOT_CALL_ERROR, 0);
  int status = done || call->help ? EXIT_SUCCESS : misused ? EXIT_MISUSED : EXIT_FAILURE;

  if ((done || call->tell_anyway) && !tell (call))
    status = EXIT_FAILURE;
  if (error != NULL)
    g_printerr ("unsoot %s: %s\n", call->command->name, error->message);
  if (misused)
    /* Translators: a command's name */
    g_printerr (_ ("“unsoot %s --help” says more.\n"), call->command->name);
  return status;
}

int
unsoot_call_run (const UnsootCommand *command, char **args)
{
  g_autofree char *name = g_strconcat ("unsoot ", command->name, NULL);
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GStrvBuilder) line = g_strv_builder_new ();
  UnsootCall call = { .command = command, .answer = answer };

  g_set_prgname (name);
  g_strv_builder_add (line, name);
  g_strv_builder_addv (line, (const char **) args);
  call.args = g_strv_builder_end (line);
  gboolean done = command->run (&call, &error);
  int status = close_call (&call, done, error);

  g_clear_pointer (&call.shop, unsoot_shop_row_free);
  g_clear_pointer (&call.db, unsoot_db_close);
  g_strfreev (call.args);
  g_free (call.file);
  g_free (call.as);
  g_free (call.now);
  return status;
}
