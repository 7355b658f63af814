/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What libFuzzer calls: FUZZ_TARGET names the function. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>

#include "targets.h"

int LLVMFuzzerInitialize (int *n_arguments, char ***arguments);
int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

/* GLib's own end is a trap, at which the fuzzer would not keep the input. */
static void
log_cb (const char *domain, GLogLevelFlags level, const char *message, gpointer unused)
{
  fprintf (stderr, "%s: %s\n", domain != NULL ? domain : "", message);
  if ((level & (G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_ERROR | G_LOG_LEVEL_WARNING)) != 0)
    abort ();
}

int
LLVMFuzzerInitialize (int *n_arguments, char ***arguments)
{
  setlocale (LC_ALL, "C.UTF-8");
  g_log_set_default_handler (log_cb, NULL);
  return 0;
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  FUZZ_TARGET (data, size);
  return 0;
}
