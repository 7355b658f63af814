/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "call.h"

/* How a command's line is read, with a command of the test's own. */

static char *seen;
static int seen_number;
static gboolean seen_json;

static gboolean
run_test (UnsootCall *call, GError **error)
{
  int number = 0;
  const GOptionEntry options[]
      = { { "number", 'n', 0, G_OPTION_ARG_INT, &number, "A number", "N" }, { NULL } };

  if (!unsoot_call_begin (call, options, 1, 2, error))
    return FALSE;
  seen = g_strjoinv ("|", call->args);
  seen_number = number;
  seen_json = call->json;
  if (g_str_equal (call->args[0], "refuse"))
    {
      g_set_error_literal (error, G_FILE_ERROR, G_FILE_ERROR_PERM, "Refused, as asked for.");
      return FALSE;
    }
  unsoot_answer_put (call->answer, "first", "First", unsoot_cell_text (call->args[0]));
  return TRUE;
}

static const UnsootCommand command
    = { "try", "ONE [TWO]", "Try a line", "More about it.", UNSOOT_NEEDS_NOTHING, run_test };

typedef struct
{
  int status;
  char *out;
  char *err;
} Told;

static void
told_clear (Told *told)
{
  g_free (told->out);
  g_free (told->err);
  g_clear_pointer (&seen, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Told, told_clear)

static char *
read_and_remove (const char *path)
{
  char *text = NULL;

  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  g_unlink (path);
  return text;
}

/* The test's process is its own, so its streams may be moved. */
static Told
run_line (const char *line)
{
  g_autofree char *folder = g_dir_make_tmp ("unsoot-line-XXXXXX", NULL);
  g_autofree char *out = g_build_filename (folder, "out", NULL);
  g_autofree char *err = g_build_filename (folder, "err", NULL);
  g_auto (GStrv) args = NULL;
  Told told = { 0 };

  setlocale (LC_ALL, "C.UTF-8");
  ck_assert (g_shell_parse_argv (line, NULL, &args, NULL));
  ck_assert_ptr_nonnull (freopen (out, "w", stdout));
  ck_assert_ptr_nonnull (freopen (err, "w", stderr));
  told.status = unsoot_call_run (&command, args);
  fflush (stdout);
  fflush (stderr);
  told.out = read_and_remove (out);
  told.err = read_and_remove (err);
  g_rmdir (folder);
  return told;
}

START_TEST (options_may_stand_anywhere)
{
  g_auto (Told) told = run_line ("one -n 7 'two words' --json");

  ck_assert_int_eq (told.status, 0);
  ck_assert_str_eq (seen, "one|two words");
  ck_assert_int_eq (seen_number, 7);
  ck_assert (seen_json);
  ck_assert_str_eq (told.err, "");
  ck_assert_ptr_nonnull (strstr (told.out, "\"first\" : \"one\""));
}
END_TEST

START_TEST (plain_is_the_default)
{
  g_auto (Told) told = run_line ("one");

  ck_assert_int_eq (told.status, 0);
  ck_assert_str_eq (told.out, "First  one\n");
}
END_TEST

START_TEST (two_dashes_end_the_options)
{
  g_auto (Told) told = run_line ("-- -n --json");

  ck_assert_int_eq (told.status, 0);
  ck_assert_str_eq (seen, "-n|--json");
}
END_TEST

/* What is not understood is 2, and says which command to ask about. */
static const struct
{
  const char *line;
  const char *names;
} misused[] = {
  { "-n 7", "ONE [TWO]" },   { "a b c", "“c”" }, { "a --unknown", "--unknown" },
  { "a -n seven", "seven" }, { "a -n", "-n" },   { "a \xff", "Argument 2" },
};

START_TEST (what_is_not_understood_is_two)
{
  g_auto (Told) told = run_line (misused[_i].line);

  ck_assert_int_eq (told.status, 2);
  ck_assert_str_eq (told.out, "");
  ck_assert_ptr_null (seen);
  ck_assert_msg (g_str_has_prefix (told.err, "unsoot try: "), "%s", told.err);
  ck_assert_msg (strstr (told.err, misused[_i].names) != NULL, "%s", told.err);
  ck_assert_msg (strstr (told.err, "“unsoot try --help”") != NULL, "%s", told.err);
}
END_TEST

START_TEST (what_is_refused_is_one)
{
  g_auto (Told) told = run_line ("refuse --json");

  ck_assert_int_eq (told.status, 1);
  ck_assert_str_eq (told.out, "");
  ck_assert_str_eq (told.err, "unsoot try: Refused, as asked for.\n");
}
END_TEST

/* A full disk, or a pipe that nobody reads any more, is no success. */
START_TEST (an_answer_that_cannot_be_written_is_no_success)
{
  char *args[] = { (char *) "one", (char *) "--json", NULL };

  ck_assert_ptr_nonnull (freopen ("/dev/full", "w", stdout));
  ck_assert_ptr_nonnull (freopen ("/dev/null", "w", stderr));
  ck_assert_int_eq (unsoot_call_run (&command, args), 1);
}
END_TEST

static Suite *
line_suite (void)
{
  Suite *suite = suite_create ("line");
  TCase *tcase = tcase_create ("line");

  tcase_add_test (tcase, options_may_stand_anywhere);
  tcase_add_test (tcase, plain_is_the_default);
  tcase_add_test (tcase, two_dashes_end_the_options);
  tcase_add_loop_test (tcase, what_is_not_understood_is_two, 0, G_N_ELEMENTS (misused));
  tcase_add_test (tcase, what_is_refused_is_one);
  tcase_add_test (tcase, an_answer_that_cannot_be_written_is_no_success);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (line_suite)
