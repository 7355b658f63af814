/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* One for each reader of what people, files and the store hand in. Each aborts where a
 * property does not hold. The corpus of fuzz_NAME is corpus/NAME, with - for _. */
#define FUZZ_TARGETS(TARGET)                                                                       \
  TARGET (amount)                                                                                  \
  TARGET (book_file)                                                                               \
  TARGET (code128)                                                                                 \
  TARGET (contact)                                                                                 \
  TARGET (day)                                                                                     \
  TARGET (find)                                                                                    \
  TARGET (fold)                                                                                    \
  TARGET (label)                                                                                   \
  TARGET (money)                                                                                   \
  TARGET (procedure)                                                                               \
  TARGET (role)                                                                                    \
  TARGET (run)                                                                                     \
  TARGET (step)                                                                                    \
  TARGET (trouble_code)                                                                            \
  TARGET (vin)

#define FUZZ_DECLARE(name) void fuzz_##name (const guint8 *data, gsize size);
FUZZ_TARGETS (FUZZ_DECLARE)
