/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pin.h"

#include <glib/gi18n-lib.h>
#include <sodium.h>
#include <string.h>

#include "store-error.h"

#define SHORTEST_PIN 4

static unsigned long long
operations (UnsootPinStrength strength)
{
  switch (strength)
    {
    case UNSOOT_PIN_INTERACTIVE:
      return crypto_pwhash_OPSLIMIT_INTERACTIVE;
    case UNSOOT_PIN_QUICK:
      return crypto_pwhash_OPSLIMIT_MIN;
    }
  g_assert_not_reached ();
}

static size_t
memory (UnsootPinStrength strength)
{
  switch (strength)
    {
    case UNSOOT_PIN_INTERACTIVE:
      return crypto_pwhash_MEMLIMIT_INTERACTIVE;
    case UNSOOT_PIN_QUICK:
      return crypto_pwhash_MEMLIMIT_MIN;
    }
  g_assert_not_reached ();
}

char *
unsoot_pin_hash (const char *pin, UnsootPinStrength strength, GError **error)
{
  char hash[crypto_pwhash_STRBYTES];

  if (!g_utf8_validate (pin, -1, NULL) || g_utf8_strlen (pin, -1) < SHORTEST_PIN)
    {
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_INVALID,
                   ngettext ("A PIN needs at least %d character.",
                             "A PIN needs at least %d characters.", SHORTEST_PIN),
                   SHORTEST_PIN);
      return NULL;
    }
  if (sodium_init () < 0
      || crypto_pwhash_str (hash, pin, strlen (pin), operations (strength), memory (strength)) != 0)
    {
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_FAILED,
                           _ ("There is not enough memory to protect the PIN. Close other "
                              "programs, then do it again."));
      return NULL;
    }
  return g_strdup (hash);
}

gboolean
unsoot_pin_verify (const char *hash, const char *pin)
{
  return hash != NULL && pin != NULL && sodium_init () >= 0
         && crypto_pwhash_str_verify (hash, pin, strlen (pin)) == 0;
}
