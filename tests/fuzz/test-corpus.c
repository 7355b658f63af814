/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every target of the fuzzer over its corpus: what was once found stays mended. */
#include "suite.h"

#include <locale.h>

#include "targets.h"

typedef struct
{
  const char *name;
  void (*run) (const guint8 *data, gsize size);
} Target;

#define TARGET(target) { #target, fuzz_##target },
static const Target targets[] = { FUZZ_TARGETS (TARGET) };

static char *
corpus_of (const Target *target)
{
  g_autofree char *name = g_strdelimit (g_strdup (target->name), "_", '-');
  return g_build_filename (g_getenv ("UNSOOT_SOURCE_DIR"), "tests", "fuzz", "corpus", name, NULL);
}

START_TEST (test_corpus)
{
  g_autofree char *folder = corpus_of (&targets[_i]);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  int n = 0;

  ck_assert_msg (dir != NULL, "no corpus: %s", folder);
  for (; (name = g_dir_read_name (dir)) != NULL; n++)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autofree char *bytes = NULL;
      gsize size = 0;
      ck_assert_msg (g_file_get_contents (path, &bytes, &size, NULL), "%s", path);
      targets[_i].run ((const guint8 *) bytes, size);
    }
  ck_assert_int_ge (n, 3);
}
END_TEST

static Suite *
corpus_suite (void)
{
  setlocale (LC_ALL, "C.UTF-8");
  Suite *suite = suite_create ("corpus");
  for (int i = 0; i < (int) G_N_ELEMENTS (targets); i++)
    {
      TCase *group = tcase_create (targets[i].name);
      tcase_add_loop_test (group, test_corpus, i, i + 1);
      suite_add_tcase (suite, group);
    }
  return suite;
}

UNSOOT_TEST_MAIN (corpus_suite)
