/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-probe.h"

#include <check.h>
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

static char *
save (GBytes *pdf)
{
  char *path = NULL;
  const int fd = g_file_open_tmp ("paper-XXXXXX.pdf", &path, NULL);

  ck_assert_int_ge (fd, 0);
  g_close (fd, NULL);
  ck_assert (g_file_set_contents (path, g_bytes_get_data (pdf, NULL),
                                  (gssize) g_bytes_get_size (pdf), NULL));
  return path;
}

/* A warning of these programs is a fault of the file as much as their refusal. */
static GBytes *
run (const char *const *command)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process = g_subprocess_newv (
      command, G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE, &error);
  g_autoptr (GBytes) complaints = NULL;
  GBytes *output = NULL;

  ck_assert_msg (process != NULL, "%s: %s", command[0], error != NULL ? error->message : "");
  ck_assert (g_subprocess_communicate (process, NULL, NULL, &output, &complaints, NULL));
  ck_assert_msg (g_subprocess_get_exit_status (process) == 0 && g_bytes_get_size (complaints) == 0,
                 "%s: %.*s", command[0], (int) MIN (g_bytes_get_size (complaints), 500),
                 (const char *) g_bytes_get_data (complaints, NULL));
  return output;
}

/* Runs a program on the file, which goes to the arguments' place "@". */
static GBytes *
run_on (GBytes *pdf, const char **command)
{
  g_autofree char *path = save (pdf);
  GBytes *output;

  for (guint i = 0; command[i] != NULL; i++)
    if (strcmp (command[i], "@") == 0)
      command[i] = path;
  output = run (command);
  g_unlink (path);
  return output;
}

void
probe_is_sound (GBytes *pdf)
{
  const char *command[] = { "qpdf", "--check", "@", NULL };
  g_autoptr (GBytes) output = run_on (pdf, command);
}

static void
free_word (gpointer data)
{
  g_free (((ProbeWord *) data)->text);
  g_free (data);
}

void
probe_free (Probe *probe)
{
  g_ptr_array_unref (probe->words);
  g_free (probe);
}

static char *
plain_text (const char *xml)
{
  static const char *const marks[][2] = { { "&amp;", "&" },   { "&lt;", "<" },  { "&gt;", ">" },
                                          { "&quot;", "\"" }, { "&#39;", "'" }, { "&apos;", "'" } };
  GString *text = g_string_new (xml);

  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    g_string_replace (text, marks[i][0], marks[i][1], 0);
  return g_string_free (text, FALSE);
}

static void
read_line (Probe *probe, const char *line)
{
  ProbeWord word = { .page = probe->pages };
  double width, height;
  int end = 0;

  if (sscanf (line, " <page width=\"%lf\" height=\"%lf\">", &width, &height) == 2)
    {
      if (probe->pages++ == 0)
        {
          probe->width = width;
          probe->height = height;
        }
    }
  else if (sscanf (line, " <word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\">%n",
                   &word.left, &word.top, &word.right, &word.bottom, &end)
               == 4
           && end > 0)
    {
      g_autofree char *xml = g_strndup (line + end, strcspn (line + end, "<"));
      word.text = plain_text (xml);
      g_ptr_array_add (probe->words, g_memdup2 (&word, sizeof word));
    }
}

Probe *
probe_words (GBytes *pdf)
{
  const char *command[] = { "pdftotext", "-bbox", "@", "-", NULL };
  g_autoptr (GBytes) output = run_on (pdf, command);
  g_autofree char *text = g_strndup (g_bytes_get_data (output, NULL), g_bytes_get_size (output));
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  Probe *probe = g_new0 (Probe, 1);

  probe->words = g_ptr_array_new_with_free_func (free_word);
  for (guint i = 0; lines[i] != NULL; i++)
    read_line (probe, lines[i]);
  return probe;
}

/* Every gap, a no-break space too, becomes one space. */
static char *
squeeze (const char *text)
{
  GString *squeezed = g_string_new (NULL);

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar character = g_utf8_get_char (at);

      if (!g_unichar_isspace (character))
        g_string_append_unichar (squeezed, character);
      else if (squeezed->len > 0 && squeezed->str[squeezed->len - 1] != ' ')
        g_string_append_c (squeezed, ' ');
    }
  return g_string_free (squeezed, FALSE);
}

char *
probe_text (GBytes *pdf, guint page)
{
  g_autofree char *first = g_strdup_printf ("%u", MAX (page, 1));
  g_autofree char *last = g_strdup_printf ("%u", page > 0 ? page : 9999);
  const char *command[] = { "pdftotext", "-f", first, "-l", last, "@", "-", NULL };
  g_autoptr (GBytes) output = run_on (pdf, command);
  g_autofree char *text = g_strndup (g_bytes_get_data (output, NULL), g_bytes_get_size (output));

  return squeeze (text);
}

guint8 *
probe_pixels (GBytes *pdf, guint page, int dpi, int *width, int *height)
{
  g_autofree char *number = g_strdup_printf ("%u", page);
  g_autofree char *dots = g_strdup_printf ("%d", dpi);
  const char *command[]
      = { "pdftoppm", "-r", dots, "-f", number, "-l", number, "-aaVector", "no", "@", NULL };
  g_autoptr (GBytes) output = run_on (pdf, command);
  const char *data = g_bytes_get_data (output, NULL);
  int most, start = 0;

  ck_assert_int_eq (sscanf (data, "P6 %d %d %d%n", width, height, &most, &start), 3);
  ck_assert_uint_eq (g_bytes_get_size (output),
                     (gsize) start + 1 + 3 * (gsize) *width * (gsize) *height);
  return g_memdup2 (data + start + 1, 3 * (gsize) *width * (gsize) *height);
}
