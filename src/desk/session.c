/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "session.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "format.h"
#include "money.h"

struct _UnsootSession
{
  GObject parent_instance;

  /* owned */
  UnsootStore *store;
  UnsootShopRow *shop;
  UnsootStaffRow *person;
  GTimeZone *zone;

  gboolean demo;
  gint64 stopped_at;
};

enum
{
  PROP_PERSON = 1,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (UnsootSession, unsoot_session, G_TYPE_OBJECT)

static void
unsoot_session_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  UnsootSession *self = UNSOOT_SESSION (object);

  switch (id)
    {
    case PROP_PERSON:
      g_value_set_pointer (value, self->person);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
unsoot_session_finalize (GObject *object)
{
  UnsootSession *self = UNSOOT_SESSION (object);

  g_clear_object (&self->store);
  g_clear_pointer (&self->shop, unsoot_shop_row_free);
  g_clear_pointer (&self->person, unsoot_staff_row_free);
  g_clear_pointer (&self->zone, g_time_zone_unref);
  G_OBJECT_CLASS (unsoot_session_parent_class)->finalize (object);
}

static void
unsoot_session_class_init (UnsootSessionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = unsoot_session_get_property;
  object_class->finalize = unsoot_session_finalize;
  properties[PROP_PERSON] = g_param_spec_pointer (
      "person", NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
unsoot_session_init (UnsootSession *self)
{
}

static GTimeZone *
zone_of_shop (const UnsootShopRow *shop)
{
  GTimeZone *zone = NULL;

  if (shop != NULL && shop->timezone != NULL)
    zone = g_time_zone_new_identifier (shop->timezone);
  return zone != NULL ? zone : g_time_zone_new_local ();
}

UnsootSession *
unsoot_session_new (UnsootStore *store, UnsootShopRow *shop, gboolean demo)
{
  UnsootSession *self = g_object_new (UNSOOT_TYPE_SESSION, NULL);

  self->store = g_object_ref (store);
  self->shop = shop;
  self->zone = zone_of_shop (shop);
  self->demo = demo;
  return self;
}

UnsootStore *
unsoot_session_get_store (UnsootSession *self)
{
  return self->store;
}

const UnsootShopRow *
unsoot_session_get_shop (UnsootSession *self)
{
  return self->shop;
}

gboolean
unsoot_session_is_demo (UnsootSession *self)
{
  return self->demo;
}

gint64
unsoot_session_now (UnsootSession *self)
{
  return self->stopped_at != 0 ? self->stopped_at : g_get_real_time () / G_USEC_PER_SEC;
}

GTimeZone *
unsoot_session_zone (UnsootSession *self)
{
  return self->zone;
}

char *
unsoot_session_today (UnsootSession *self)
{
  return unsoot_format_iso_day (unsoot_session_now (self), self->zone);
}

void
unsoot_session_stop_clock (UnsootSession *self, gint64 at)
{
  self->stopped_at = at;
}

const UnsootStaffRow *
unsoot_session_get_person (UnsootSession *self)
{
  return self->person;
}

void
unsoot_session_set_person (UnsootSession *self, const UnsootStaffRow *person)
{
  UnsootStaffRow *copy
      = person != NULL ? unsoot_record_copy (&unsoot_staff_row_type, person) : NULL;

  g_clear_pointer (&self->person, unsoot_staff_row_free);
  self->person = copy;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_PERSON]);
}

gboolean
unsoot_session_get_role (UnsootSession *self, UnsootRole *role)
{
  return self->person != NULL && unsoot_role_find (self->person->role, role);
}

/* The decimal sign is the computer's, as everywhere else on its screen. */
static UnsootMoneyStyle
money_style (void)
{
  const struct lconv *here = localeconv ();

  return here->decimal_point[0] == ',' ? UNSOOT_MONEY_COMMA : UNSOOT_MONEY_POINT;
}

UnsootActing
unsoot_session_acting (UnsootSession *self)
{
  const UnsootStaffRow *person = unsoot_session_get_person (self);

  /* Staff 0 is the program itself, which may do everything: nobody at the desk is nobody. */
  return (UnsootActing){ .staff_id = person != NULL ? person->id : -1,
                         .now = unsoot_session_now (self) };
}

char *
unsoot_session_refusal (UnsootSession *self, UnsootDeed deed)
{
  UnsootRole role;

  if (!unsoot_session_get_role (self, &role))
    return g_strdup (_ ("Nobody is at this desk. Say who you are first."));
  return unsoot_role_refusal (role, deed);
}

char *
unsoot_session_money (UnsootSession *self, gint64 minor)
{
  return unsoot_money_format (minor, self->shop->currency, money_style ());
}

gboolean
unsoot_session_parse_money (UnsootSession *self, const char *text, gint64 *minor, GError **error)
{
  return unsoot_money_parse (text, self->shop->currency, money_style (), minor, error);
}

void
unsoot_session_set_shop (UnsootSession *self, UnsootShopRow *shop)
{
  g_clear_pointer (&self->shop, unsoot_shop_row_free);
  g_clear_pointer (&self->zone, g_time_zone_unref);
  self->shop = shop;
  self->zone = zone_of_shop (shop);
}
