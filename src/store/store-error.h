/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * UnsootStoreError:
 * @UNSOOT_STORE_ERROR_BUSY: another program is writing; try again
 * @UNSOOT_STORE_ERROR_CONFLICT: the row was changed since it was read; show both
 * @UNSOOT_STORE_ERROR_CONSTRAINT: the value contradicts another row or a rule of the table
 * @UNSOOT_STORE_ERROR_NEWER_FORMAT: written by a newer Unsoot; upgrade the program
 * @UNSOOT_STORE_ERROR_NOT_OURS: not a shop's book; choose another file
 * @UNSOOT_STORE_ERROR_DAMAGED: the file is damaged; restore a backup
 * @UNSOOT_STORE_ERROR_NO_SPACE: the disk is full; make room, then do it again
 * @UNSOOT_STORE_ERROR_NOT_FOUND: there is no such row or file
 * @UNSOOT_STORE_ERROR_READ_ONLY: the file can be read, not written
 * @UNSOOT_STORE_ERROR_CANCELLED: stopped because the caller asked for it
 * @UNSOOT_STORE_ERROR_NOT_ALLOWED: no code path may do this, or the person may not
 * @UNSOOT_STORE_ERROR_INVALID: what was given can't be stored as it is
 * @UNSOOT_STORE_ERROR_FAILED: something else; nothing of the deed was kept
 *
 * Named for what the caller can do about it; the message is a sentence for a person.
 */
typedef enum
{
  UNSOOT_STORE_ERROR_BUSY,
  UNSOOT_STORE_ERROR_CONFLICT,
  UNSOOT_STORE_ERROR_CONSTRAINT,
  UNSOOT_STORE_ERROR_NEWER_FORMAT,
  UNSOOT_STORE_ERROR_NOT_OURS,
  UNSOOT_STORE_ERROR_DAMAGED,
  UNSOOT_STORE_ERROR_NO_SPACE,
  UNSOOT_STORE_ERROR_NOT_FOUND,
  UNSOOT_STORE_ERROR_READ_ONLY,
  UNSOOT_STORE_ERROR_CANCELLED,
  UNSOOT_STORE_ERROR_NOT_ALLOWED,
  UNSOOT_STORE_ERROR_INVALID,
  UNSOOT_STORE_ERROR_FAILED,
} UnsootStoreError;

#define UNSOOT_STORE_ERROR (unsoot_store_error_quark ())

GQuark unsoot_store_error_quark (void);
