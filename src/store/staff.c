/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "staff.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "fold.h"
#include "pin.h"

GPtrArray *
unsoot_staff_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_staff_row_type, error, "ORDER BY active DESC, name, id");
}

UnsootStaffRow *
unsoot_staff_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_staff_row_type, id, error);
}

static gboolean
check_person (const UnsootStaffRow *person, GError **error)
{
  UnsootRole role;

  if (unsoot_deed_blank (person->name) || unsoot_deed_blank (person->initials))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Everyone who works here needs a name and initials."));
  return unsoot_role_parse (person->role, &role, error);
}

/* A book without an owner could never have its staff changed again. */
static gboolean
check_owner_stays (UnsootDb *db, const UnsootStaffRow *person, GError **error)
{
  gint64 owners = 0;

  if (!unsoot_db_int (db, &owners, error,
                      "SELECT count (*) FROM staff WHERE role = 'owner' AND active = 1"))
    return FALSE;
  if (owners == 0 && person->id != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("%s is the last owner here. Make someone else an owner first."),
                             person->name);
  return TRUE;
}

gboolean
unsoot_staff_save (UnsootDb *db, const UnsootActing *who, UnsootStaffRow *person, GError **error)
{
  gboolean existed = person->id != 0;
  UnsootRecordHead before = { person->id, person->version };

  if (!check_person (person, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_STAFF, error);
  if (deed == NULL)
    return FALSE;
  gboolean done = unsoot_deed_keep (db, &unsoot_staff_row_type, person, who, error)
                  && (!existed || check_owner_stays (db, person, error));
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  person->id = before.id;
  person->version = before.version;
  return FALSE;
}

gboolean
unsoot_staff_set_pin (UnsootDb *db, const UnsootActing *who, gint64 staff_id, const char *pin,
                      GError **error)
{
  g_autofree char *hash = unsoot_pin_hash (pin, UNSOOT_PIN_INTERACTIVE, error);
  if (hash == NULL)
    return FALSE;

  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  if (deed == NULL
      || (who->staff_id != staff_id
          && !unsoot_deed_allowed (db, who, UNSOOT_DEED_EDIT_STAFF, error)))
    return FALSE;
  g_autoptr (UnsootStaffRow) person = unsoot_staff_load (db, staff_id, error);
  if (person == NULL)
    return FALSE;
  g_free (person->pin_hash);
  person->pin_hash = g_steal_pointer (&hash);
  return unsoot_rows_update (db, &unsoot_staff_row_type, person, who, error)
         && unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

UnsootStaffRow *
unsoot_staff_sign_in (UnsootDb *db, gint64 staff_id, const char *pin, GError **error)
{
  g_autoptr (UnsootStaffRow) person = unsoot_staff_load (db, staff_id, error);

  if (person == NULL)
    return NULL;
  if (!person->active)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_ALLOWED, _ ("%s no longer works here."),
                      person->name);
  else if (person->pin_hash == NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                      _ ("%s has no PIN yet. An owner can set one."), person->name);
  else if (!unsoot_pin_verify (person->pin_hash, pin))
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                      _ ("That is not the PIN of %s. Try again."), person->name);
  else
    return g_steal_pointer (&person);
  return NULL;
}

static gboolean
is_called (const UnsootStaffRow *person, const char *folded)
{
  g_autofree char *name = unsoot_fold (person->name, NULL);
  g_autofree char *initials = unsoot_fold (person->initials, NULL);

  return g_strcmp0 (name, folded) == 0 || g_strcmp0 (initials, folded) == 0;
}

UnsootStaffRow *
unsoot_staff_find (UnsootDb *db, const char *name_or_initials, GError **error)
{
  g_autofree char *folded = unsoot_fold (name_or_initials, error);
  g_autoptr (GPtrArray) people = folded != NULL ? unsoot_staff_list (db, error) : NULL;
  g_autoptr (GString) names = g_string_new (NULL);

  if (people == NULL)
    return NULL;
  for (guint i = 0; i < people->len; i++)
    {
      const UnsootStaffRow *person = people->pdata[i];
      if (!person->active)
        continue;
      if (is_called (person, folded))
        return unsoot_record_copy (&unsoot_staff_row_type, person);
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", person->name);
    }
  unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_FOUND, _ ("Nobody here is called “%s”: %s."),
                    name_or_initials, names->str);
  return NULL;
}
