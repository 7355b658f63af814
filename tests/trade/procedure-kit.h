/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads the demo's procedures and edits their lines, for the tests of the
 * checker, the rig and the run. */
#pragma once

#include "procedure-text.h"
#include "rig.h"
#include "suite.h"

#include <string.h>

#define BRINDLE "brindle-t4-5-1"
#define HARROW "harrow-l6-6-6"
#define FENMOOR "fenmoor-v4-3-0"
#define TOLVER "tolver-h6-9-0"
#define SKELDER "skelder-c4-2-2"

G_GNUC_UNUSED static const char *const kit_names[] = { BRINDLE, HARROW, FENMOOR, TOLVER, SKELDER };

G_GNUC_UNUSED static char *
kit_text (const char *name)
{
  g_autofree char *file = g_strconcat (name, ".txt", NULL);
  g_autofree char *path
      = g_build_filename (g_getenv ("UNSOOT_SOURCE_DIR"), "data", "demo", "procedures", file, NULL);
  char *text = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  ck_no_error (error);
  return text;
}

G_GNUC_UNUSED static void
kit_parse (const char *text, UnsootProcedure **procedure, UnsootFamilyFacts **facts)
{
  g_autoptr (GError) error = NULL;

  *procedure = NULL;
  *facts = NULL;
  unsoot_procedure_parse (text, procedure, facts, &error);
  ck_no_error (error);
}

G_GNUC_UNUSED static void
kit_load (const char *name, UnsootProcedure **procedure, UnsootFamilyFacts **facts)
{
  g_autofree char *text = kit_text (name);

  kit_parse (text, procedure, facts);
}

/* The index of the line that opens with WHAT; "WHAT#2" is the second such line. */
G_GNUC_UNUSED static guint
kit_find (const GPtrArray *lines, const char *what)
{
  const char *hash = strrchr (what, '#');
  g_autofree char *prefix
      = hash != NULL ? g_strndup (what, (gsize) (hash - what)) : g_strdup (what);
  int nth = hash != NULL ? atoi (hash + 1) : 1;

  for (guint i = 0; i < lines->len; i++)
    if (g_str_has_prefix (lines->pdata[i], prefix) && --nth == 0)
      return i;
  ck_abort_msg ("no line opens with “%s”", what);
  return 0;
}

/* One edit: "-LINE" deletes, "LINE => TEXT" replaces, "<LINE => TEXT" inserts
 * TEXT before, ">LINE => TEXT" after, "^LINE => OTHER" moves LINE before OTHER. */
G_GNUC_UNUSED static void
kit_edit (GPtrArray *lines, const char *edit)
{
  gboolean marked = strchr ("-<>^", *edit) != NULL;
  g_auto (GStrv) parts = g_strsplit (edit + marked, " => ", 2);
  guint at = kit_find (lines, parts[0]);

  if (*edit == '-')
    g_ptr_array_remove_index (lines, at);
  else if (*edit == '^')
    {
      char *line = g_ptr_array_steal_index (lines, at);
      g_ptr_array_insert (lines, (int) kit_find (lines, parts[1]), line);
    }
  else if (marked)
    g_ptr_array_insert (lines, (int) at + (*edit == '>'), g_strdup (parts[1]));
  else
    {
      g_free (lines->pdata[at]);
      lines->pdata[at] = g_strdup (parts[1]);
    }
}

/* EDITS are separated by line ends and done in order. */
G_GNUC_UNUSED static char *
kit_edited (const char *name, const char *edits)
{
  g_autofree char *text = kit_text (name);
  g_auto (GStrv) split = g_strsplit (text, "\n", -1);
  g_auto (GStrv) each = g_strsplit (edits, "\n", -1);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  for (char **line = split; *line != NULL; line++)
    g_ptr_array_add (lines, g_strdup (*line));
  for (char **edit = each; *edit != NULL; edit++)
    if (**edit != '\0')
      kit_edit (lines, *edit);
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **) lines->pdata);
}

/* "drive road#1": the step's line, and which of its kind it is. */
G_GNUC_UNUSED static int
kit_step_index (const UnsootProcedure *procedure, const char *what)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  if (g_str_equal (what, "end"))
    return (int) procedure->steps->len;
  for (guint i = 0; i < procedure->steps->len; i++)
    g_ptr_array_add (lines, unsoot_step_print (procedure->steps->pdata[i]));
  return (int) kit_find (lines, what);
}
