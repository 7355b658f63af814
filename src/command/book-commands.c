/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "backup.h"
#include "carry.h"
#include "deed.h"
#include "demo.h"
#include "migrate.h"
#include "shops.h"
#include "when.h"

/* The book itself: made as a demo, looked through, copied. */

/* The moment that a day without a clock stands for; the demo's town sets its own. */
#define DEMO_CLOCK "T16:00:00Z"

static gboolean
run_verify (UnsootCall *call, GError **error)
{
  g_autoptr (GPtrArray) findings = NULL;

  if (!unsoot_call_begin (call, NULL, 0, 0, error) || !unsoot_verify (call->db, &findings, error))
    return FALSE;
  call->tell_anyway = TRUE;
  unsoot_answer_put (call->answer, "file", _ ("Book"),
                     unsoot_cell_text (unsoot_db_path (call->db)));
  unsoot_answer_put (call->answer, "sound", _ ("Sound"), unsoot_cell_flag (findings->len == 0));
  unsoot_answer_list (call->answer, "findings", _ ("Findings"), findings);
  if (findings->len > 0)
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_DAMAGED,
                 ngettext ("%u thing in the book is wrong. Restore a copy.",
                           "%u things in the book are wrong. Restore a copy.", findings->len),
                 findings->len);
  return findings->len == 0;
}

static char *
keep_copy (UnsootCall *call, GError **error)
{
  g_autofree char *folder = unsoot_backup_folder (call->db);

  return unsoot_backup_keep (call->db, folder, "command", call->who.now, error);
}

static char *
copy_to (UnsootCall *call, const char *path, GError **error)
{
  return unsoot_backup_to (call->db, path, error) ? g_strdup (path) : NULL;
}

static gboolean
run_backup (UnsootCall *call, GError **error)
{
  if (!unsoot_call_begin (call, NULL, 0, 1, error)
      || !unsoot_deed_allowed (call->db, &call->who, UNSOOT_DEED_BACKUP, error))
    return FALSE;
  g_autofree char *copy
      = call->n_args == 1 ? copy_to (call, call->args[0], error) : keep_copy (call, error);
  if (copy == NULL)
    return FALSE;
  unsoot_answer_put (call->answer, "copy", _ ("Copy"), unsoot_cell_text (copy));
  return TRUE;
}

static gboolean
read_at (UnsootCall *call, const char *text, GError **error)
{
  g_autofree char *noon = text != NULL ? g_strconcat (text, DEMO_CLOCK, NULL) : NULL;

  if (text == NULL || unsoot_when_absolute (noon, &call->who.now, NULL))
    return TRUE;
  return unsoot_when_absolute (text, &call->who.now, error);
}

/* For a person who waits; a script is told nothing until it is done. */
static void
show_progress (double share, gpointer data)
{
  if (isatty (STDERR_FILENO))
    g_printerr ("\r%3.0f %%%s", 100.0 * share, share >= 1.0 ? "\n" : "");
}

static gboolean
make_demo (UnsootCall *call, const char *path, GError **error)
{
  if (g_file_test (path, G_FILE_TEST_EXISTS))
    {
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT,
                   _ ("“%s” is there already. Choose another name for the demo shop."), path);
      return FALSE;
    }
  call->db = unsoot_db_open (path, UNSOOT_DB_CREATE, error);
  if (call->db == NULL || !unsoot_migrate (call->db, call->who.now, error)
      || !unsoot_demo_make (call->db, call->who.now, show_progress, NULL, NULL, error))
    return FALSE;
  call->shop = unsoot_shop_load (call->db, error);
  return call->shop != NULL;
}

static gboolean
tell_demo (UnsootCall *call, const char *path)
{
  g_autofree char *pins = unsoot_demo_pins ();

  unsoot_answer_put (call->answer, "file", _ ("Demo shop"), unsoot_cell_text (path));
  unsoot_answer_put (call->answer, "shop", _ ("Name"), unsoot_cell_text (call->shop->name));
  unsoot_answer_put (call->answer, "now", _ ("Its day"), unsoot_call_moment (call, call->who.now));
  unsoot_answer_put (call->answer, "people", _ ("Its people"),
                     unsoot_cell_text (g_strchomp (pins)));
  return TRUE;
}

/* The shop that an earlier carrying left in the folder is made anew. */
static gboolean
carry_in (UnsootCall *call, const char *folder, GError **error)
{
  static const char *const endings[] = { "", "-wal", "-shm" };
  g_autofree char *path = g_build_filename (folder, UNSOOT_CARRY_BOOK, NULL);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_FAILED,
                   _ ("The folder “%s” can't be made."), folder);
      return FALSE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *old = g_strconcat (path, endings[i], NULL);
      g_unlink (old);
    }
  return make_demo (call, path, error) && unsoot_carry (call, folder, error);
}

static gboolean
run_demo (UnsootCall *call, GError **error)
{
  g_autofree char *at = NULL, *folder = NULL;
  const GOptionEntry options[] = {
    { "file", 'f', 0, G_OPTION_ARG_FILENAME, &call->file, N_ ("The new book of the demo shop"),
      N_ ("FILE") },
    { "carry", 0, 0, G_OPTION_ARG_FILENAME, &folder,
      N_ ("Make it in DIR, carry one job through there and write its papers; the demo shop of an "
          "earlier time is replaced"),
      N_ ("DIR") },
    { "at", 0, 0, G_OPTION_ARG_STRING, &at,
      N_ ("The day around which it is made; without it, "
          "today"),
      N_ ("DATE") },
    { NULL }
  };

  if (!unsoot_call_begin (call, options, 0, 0, error) || !read_at (call, at, error))
    return FALSE;
  if (folder != NULL && call->file != NULL)
    return unsoot_call_misused (error, _ ("--carry names its own file: leave --file out."));
  if (folder != NULL)
    return carry_in (call, folder, error);
  return unsoot_call_wants (call->file, "--file", error) && make_demo (call, call->file, error)
         && tell_demo (call, call->file);
}

const UnsootCommand unsoot_book_commands[] = {
  { "demo", NULL, N_ ("Make an invented shop to try things out"), NULL, UNSOOT_NEEDS_NOTHING,
    run_demo },
  { "verify", NULL, N_ ("Look at every page, index and reference of the book"), NULL,
    UNSOOT_NEEDS_BOOK, run_verify },
  { "backup", N_ ("[FILE]"), N_ ("Make a whole, checked copy of the book"),
    N_ ("Without a FILE, beside the book, where the newest ten are kept."), UNSOOT_NEEDS_PERSON,
    run_backup },
  { NULL },
};
