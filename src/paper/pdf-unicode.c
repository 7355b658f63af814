/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pdf-unicode.h"

#include <string.h>

/* Blocks of 256 that the papers' characters come from; a list may have a hundred ranges. */
static const struct
{
  int from, to;
} blocks[] = { { 0x00, 0x2F }, { 0xA6, 0xAB }, { 0xFB, 0xFF } };

/* Codes are the characters themselves; a range may not cross its last byte's end. */
static char *
code_map (void)
{
  GString *ranges = g_string_new (NULL);
  GString *map = g_string_new ("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                               "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) "
                               "/Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n"
                               "/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\n"
                               "endcodespacerange\n");
  int count = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (blocks); i++)
    for (int high = blocks[i].from; high <= blocks[i].to; high++, count++)
      g_string_append_printf (ranges, "<%02X00> <%02XFF> <%02X00>\n", high, high, high);
  g_string_append_printf (map, "%d beginbfrange\n%sendbfrange\n", count, ranges->str);
  g_string_append (map, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n");
  g_string_free (ranges, TRUE);
  return g_string_free (map, FALSE);
}

/* The numbers of the objects that fonts name as their maps, in order, each once. */
static GArray *
map_objects (const char *data, gsize size)
{
  static const char key[] = "/ToUnicode ";
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (guint64));
  const char *end = data + size;

  for (const char *at = data; (at = memmem (at, (gsize) (end - at), key, strlen (key))) != NULL;)
    {
      char *rest;
      const guint64 number = g_ascii_strtoull (at + strlen (key), &rest, 10);

      if (g_str_has_prefix (rest, " 0 R"))
        g_array_append_val (numbers, number);
      at = rest;
    }
  return numbers;
}

/* The end of a file as text: what stands before may be a picture's bytes. */
static char *
last_text (const char *data, gsize size)
{
  char *text = g_malloc (size + 1);

  for (gsize i = 0; i < size; i++)
    text[i] = data[i] != '\0' ? data[i] : ' ';
  text[size] = '\0';
  return text;
}

/* The last "trailer" dictionary's inside, and where its table is; FALSE for another make. */
static gboolean
read_trailer (const char *data, gsize size, char **inside, guint64 *table)
{
  const gsize tail = MIN (size, 1024);
  g_autofree char *end = last_text (data + size - tail, tail);
  const char *trailer = g_strrstr (end, "trailer");
  const char *start = trailer != NULL ? strstr (trailer, "<<") : NULL;
  const char *close = start != NULL ? strstr (start, ">>") : NULL;
  const char *place = close != NULL ? strstr (close, "startxref") : NULL;

  if (place == NULL)
    return FALSE;
  *inside = g_strndup (start + 2, (gsize) (close - start - 2));
  *table = g_ascii_strtoull (place + strlen ("startxref"), NULL, 10);
  return *table > 0 && *table < size;
}

static void
append_object (GString *file, GString *table, guint64 number, const char *map)
{
  g_string_append_printf (table, "%" G_GUINT64_FORMAT " 1\n%010" G_GSIZE_FORMAT " 00000 n \n",
                          number, file->len);
  g_string_append_printf (file,
                          "%" G_GUINT64_FORMAT " 0 obj\n<< /Length %" G_GSIZE_FORMAT
                          " >>\nstream\n%s\nendstream\nendobj\n",
                          number, strlen (map), map);
}

static GBytes *
append_update (const char *data, gsize size, const GArray *numbers, const char *trailer,
               guint64 previous)
{
  g_autofree char *map = code_map ();
  GString *file = g_string_new_len (data, (gssize) size);
  GString *table = g_string_new ("xref\n");
  gsize start;

  g_string_append_c (file, '\n');
  for (guint i = 0; i < numbers->len; i++)
    append_object (file, table, g_array_index (numbers, guint64, i), map);
  start = file->len;
  g_string_append_printf (file,
                          "%strailer\n<<%s/Prev %" G_GUINT64_FORMAT
                          "\n>>\nstartxref\n%" G_GSIZE_FORMAT "\n%%%%EOF\n",
                          table->str, trailer, previous, start);
  g_string_free (table, TRUE);
  return g_string_free_to_bytes (file);
}

GBytes *
unsoot_pdf_mend_unicode (GBytes *pdf)
{
  gsize size;
  const char *data = g_bytes_get_data (pdf, &size);
  g_autoptr (GArray) numbers = map_objects (data, size);
  g_autofree char *trailer = NULL;
  guint64 table;

  if (numbers->len == 0 || !read_trailer (data, size, &trailer, &table))
    return g_bytes_ref (pdf);
  return append_update (data, size, numbers, trailer, table);
}
