/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* How much work a guess costs. */
typedef enum
{
  UNSOOT_PIN_INTERACTIVE, /* libsodium's limits for a login: what a shop uses */
  UNSOOT_PIN_QUICK,       /* its least limits: tests and the demo shop */
} UnsootPinStrength;

/**
 * unsoot_pin_hash:
 * @pin: at least four characters
 *
 * An Argon2id string (libsodium's crypto_pwhash_str) with its own salt.
 * Errors: INVALID for a PIN that is too short; FAILED where memory is short.
 */
char *unsoot_pin_hash (const char *pin, UnsootPinStrength strength, GError **error);

/* Whether @pin is the one that @hash was made from; a NULL or broken @hash never is. */
gboolean unsoot_pin_verify (const char *hash, const char *pin);
