/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "new-shop.h"

#include <glib/gi18n-lib.h>

#include "bookings.h"
#include "deed.h"
#include "dose.h"
#include "services.h"
#include "shops.h"
#include "staff.h"

enum
{
  MOST_INITIALS = 3,
  LAST_WEEKDAY = 5,
  OPENS_MINUTE = 8 * 60,
  CLOSES_MINUTE = 17 * 60
};

char *
unsoot_new_shop_initials (const char *name)
{
  g_autoptr (GString) initials = g_string_new (NULL);
  g_auto (GStrv) words = g_strsplit_set (name, " \t-", -1);
  int n = 0;

  for (char **word = words; *word != NULL && n < MOST_INITIALS; word++)
    if (**word != '\0')
      {
        g_string_append_unichar (initials, g_unichar_toupper (g_utf8_get_char (*word)));
        n++;
      }
  return g_string_free (g_steal_pointer (&initials), FALSE);
}

static gboolean
make_shop (UnsootDb *db, const UnsootNewShop *wish, const UnsootActing *who, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_row_new ();

  shop->name = g_strdup (wish->name);
  shop->town = g_strdup (wish->town);
  shop->currency = g_strdup (wish->currency);
  shop->paper = g_strdup (wish->paper);
  /* Any overrun asks again until the owner sets the limits of the state. */
  shop->estimate_valid_days = 30;
  shop->next_due_months = 12;
  shop->next_due_metres = 48280320; /* 30,000 miles; common practice, no source */
  shop->next_due_seconds = 500 * 3600;
  return unsoot_shop_save (db, who, shop, error);
}

static gboolean
make_owner (UnsootDb *db, const UnsootNewShop *wish, const UnsootActing *who, GError **error)
{
  g_autoptr (UnsootStaffRow) owner = unsoot_staff_row_new ();

  owner->name = g_strdup (wish->owner);
  owner->initials = unsoot_new_shop_initials (wish->owner);
  owner->role = g_strdup (unsoot_role_slug (UNSOOT_ROLE_OWNER));
  owner->active = TRUE;
  return unsoot_staff_save (db, who, owner, error)
         && unsoot_staff_set_pin (db, who, owner->id, wish->pin, error);
}

static gboolean
make_bay (UnsootDb *db, const UnsootActing *who, GError **error)
{
  g_autoptr (UnsootBayRow) bay = unsoot_bay_row_new ();

  bay->name = g_strdup (_ ("Bay 1"));
  bay->position = 1;
  bay->active = TRUE;
  return unsoot_bay_save (db, who, bay, error);
}

static gboolean
make_hours (UnsootDb *db, const UnsootActing *who, GError **error)
{
  for (int weekday = 1; weekday <= LAST_WEEKDAY; weekday++)
    {
      g_autoptr (UnsootOpenHoursRow) hours = unsoot_open_hours_row_new ();

      hours->weekday = weekday;
      hours->opens_minute = OPENS_MINUTE;
      hours->closes_minute = CLOSES_MINUTE;
      if (!unsoot_open_hours_save (db, who, hours, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_dose_rules (UnsootDb *db, const UnsootActing *who, GError **error)
{
  gsize n;
  const UnsootDoseRule *usual = unsoot_dose_common_practice (&n);

  for (gsize i = 0; i < n; i++)
    {
      g_autoptr (UnsootDoseRuleRow) rule = unsoot_dose_rule_row_new ();

      rule->side = g_strdup (unsoot_side_to_slug (usual[i].side));
      rule->size_class = g_strdup (unsoot_size_class_slug (usual[i].size));
      rule->dose_ml = usual[i].ml;
      rule->source = g_strdup (usual[i].source);
      if (!unsoot_dose_rule_save (db, who, rule, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
unsoot_new_shop_make (UnsootDb *db, const UnsootNewShop *wish, gint64 now, GError **error)
{
  const UnsootActing who = { .staff_id = 0, .now = now };
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  gboolean done;

  if (deed == NULL)
    return FALSE;
  done = make_shop (db, wish, &who, error) && make_owner (db, wish, &who, error)
         && make_bay (db, &who, error) && make_hours (db, &who, error)
         && make_dose_rules (db, &who, error);
  return unsoot_deed_end (&deed, done, error);
}
