/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* SQLite says "UNIQUE constraint failed: lots.fluid_id, lots.code". */
static const char *
after_colon (const char *message)
{
  const char *colon = strstr (message, ": ");
  return colon != NULL ? colon + 2 : message;
}

static void
set_constraint_error (GError **error, int code, const char *message)
{
  const char *what = after_colon (message);

  switch (code)
    {
    case SQLITE_CONSTRAINT_UNIQUE:
    case SQLITE_CONSTRAINT_PRIMARYKEY:
    case SQLITE_CONSTRAINT_ROWID:
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT,
                   /* Translators: %s is a table and its column, as in "lots.code" */
                   _ ("Another entry has the same value already (%s). Choose a different one."),
                   what);
      break;
    case SQLITE_CONSTRAINT_FOREIGNKEY:
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT,
                           _ ("An entry that this one refers to is not there, or others still "
                              "refer to this one."));
      break;
    case SQLITE_CONSTRAINT_NOTNULL:
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT,
                   _ ("A value is missing (%s). Fill it in."), what);
      break;
    case SQLITE_CONSTRAINT_TRIGGER:
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                   _ ("What was posted is never changed; post a correction instead (%s)."),
                   message);
      break;
    default:
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT,
                   _ ("A value is outside what this entry allows (%s)."), what);
      break;
    }
}

static UnsootStoreError
kind_of (int code)
{
  switch (code & 0xff)
    {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return UNSOOT_STORE_ERROR_BUSY;
    case SQLITE_CORRUPT:
      return UNSOOT_STORE_ERROR_DAMAGED;
    case SQLITE_NOTADB:
      return UNSOOT_STORE_ERROR_NOT_OURS;
    case SQLITE_FULL:
      return UNSOOT_STORE_ERROR_NO_SPACE;
    case SQLITE_READONLY:
      return UNSOOT_STORE_ERROR_READ_ONLY;
    case SQLITE_INTERRUPT:
      return UNSOOT_STORE_ERROR_CANCELLED;
    case SQLITE_AUTH:
      return UNSOOT_STORE_ERROR_NOT_ALLOWED;
    case SQLITE_TOOBIG:
    case SQLITE_MISMATCH:
      return UNSOOT_STORE_ERROR_INVALID;
    default:
      return UNSOOT_STORE_ERROR_FAILED;
    }
}

static const char *
sentence_of (UnsootStoreError kind)
{
  switch (kind)
    {
    case UNSOOT_STORE_ERROR_BUSY:
      return _ ("Another program is writing to the shop’s book. Wait a moment, then do it again.");
    case UNSOOT_STORE_ERROR_DAMAGED:
      return _ ("The shop’s book is damaged. Stop working in it and restore the latest backup.");
    case UNSOOT_STORE_ERROR_NOT_OURS:
      return _ ("This file is not a shop’s book.");
    case UNSOOT_STORE_ERROR_NO_SPACE:
      return _ ("The disk is full, so nothing of this was kept. Make room, then do it again.");
    case UNSOOT_STORE_ERROR_READ_ONLY:
      return _ ("The shop’s book can be read here, not written.");
    case UNSOOT_STORE_ERROR_CANCELLED:
      return _ ("Stopped.");
    case UNSOOT_STORE_ERROR_NOT_ALLOWED:
      return _ ("The book does not allow this change.");
    case UNSOOT_STORE_ERROR_INVALID:
      return _ ("A value is of the wrong kind or too long to be kept.");
    case UNSOOT_STORE_ERROR_CONFLICT:
    case UNSOOT_STORE_ERROR_CONSTRAINT:
    case UNSOOT_STORE_ERROR_NEWER_FORMAT:
    case UNSOOT_STORE_ERROR_NOT_FOUND:
    case UNSOOT_STORE_ERROR_FAILED:
      break;
    }
  return _ ("The shop’s book could not be read or written, so nothing of this was kept.");
}

void
unsoot_sqlite_set_error (GError **error, sqlite3 *handle, int code)
{
  /* A damaged file's own names are in it, whatever their bytes are. */
  g_autofree char *message
      = g_utf8_make_valid (handle != NULL ? sqlite3_errmsg (handle) : sqlite3_errstr (code), -1);
  int extended = handle != NULL ? sqlite3_extended_errcode (handle) : code;

  if ((code & 0xff) == SQLITE_CONSTRAINT)
    {
      set_constraint_error (error, extended, message);
      return;
    }
  UnsootStoreError kind = kind_of (code);
  if (kind == UNSOOT_STORE_ERROR_CANCELLED)
    g_set_error_literal (error, UNSOOT_STORE_ERROR, (int) kind, sentence_of (kind));
  else
    g_set_error (error, UNSOOT_STORE_ERROR, (int) kind, "%s (%s)", sentence_of (kind), message);
}
