/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-form.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>

#include "civil.h"
#include "label-day.h"
#include "money.h"
#include "pack-text.h"
#include "trade-error.h"

UnsootDeedOrder *
unsoot_deed_order_new (gint64 record)
{
  UnsootDeedOrder *order = g_new0 (UnsootDeedOrder, 1);

  order->record = record;
  return order;
}

UnsootDeedOrder *
unsoot_deed_order_copy (const UnsootDeedOrder *order)
{
  UnsootDeedOrder *copy = g_memdup2 (order, sizeof *order);

  for (gsize i = 0; i < UNSOOT_DEED_FIELDS; i++)
    copy->values[i].text = g_strdup (order->values[i].text);
  if (copy->picture.jpeg != NULL)
    g_bytes_ref (copy->picture.jpeg);
  copy->said = NULL;
  return copy;
}

void
unsoot_deed_order_free (UnsootDeedOrder *order)
{
  if (order == NULL)
    return;
  for (gsize i = 0; i < UNSOOT_DEED_FIELDS; i++)
    g_free (order->values[i].text);
  unsoot_picture_clear (&order->picture);
  g_free (order->said);
  g_free (order);
}

const char *
unsoot_deed_text (const UnsootDeedOrder *order, gsize field)
{
  const char *text = order->values[field].text;

  return text != NULL && *text != '\0' ? text : NULL;
}

static gboolean
read_volume (const char *text, UnsootDeedValue *value, GError **error)
{
  UnsootPackText pack;

  if (!unsoot_pack_text_parse (text, UNSOOT_UNIT_L, &pack, error))
    return FALSE;
  value->number = pack.ml;
  return TRUE;
}

/* The decimal sign is the computer's, as amounts are shown. */
static gboolean
read_money (const char *text, const char *currency, UnsootDeedValue *value, GError **error)
{
  const UnsootMoneyStyle style
      = localeconv ()->decimal_point[0] == ',' ? UNSOOT_MONEY_COMMA : UNSOOT_MONEY_POINT;

  return unsoot_money_parse (text, currency, style, &value->number, error);
}

static gboolean
read_day (const char *text, UnsootDeedValue *value, GError **error)
{
  int day;

  if (!unsoot_label_day_parse (text, &day, error))
    return FALSE;
  g_free (value->text);
  value->text = unsoot_day_iso (day);
  return TRUE;
}

static gboolean
read_pressure (const char *text, UnsootDeedValue *value, GError **error)
{
  UnsootTyped typed;

  if (!unsoot_typed_parse (text, UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_PSI, &typed, error))
    return FALSE;
  value->real = typed.si;
  return TRUE;
}

static gboolean
read_count (const char *text, UnsootDeedValue *value, GError **error)
{
  double number;

  if (!unsoot_number_parse (text, &number, error))
    return FALSE;
  if (number < 1 || number > 1e6 || number != floor (number))
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                   _ ("“%s” is no whole number above zero"), text);
      return FALSE;
    }
  value->number = (gint64) number;
  return TRUE;
}

gboolean
unsoot_deed_field_read (const UnsootDeedField *field, const char *text, const char *currency,
                        UnsootDeedValue *value, GError **error)
{
  g_free (value->text);
  value->text = g_strstrip (g_strdup (text));
  if (*value->text == '\0')
    {
      if (field->optional)
        return TRUE;
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   /* Translators: the label of a field that was left empty */
                   _ ("“%s” is needed"), _ (field->label));
      return FALSE;
    }
  switch (field->kind)
    {
    case UNSOOT_ASK_TEXT:
    case UNSOOT_ASK_CHOICE:
      return TRUE;
    case UNSOOT_ASK_VOLUME:
      return read_volume (value->text, value, error);
    case UNSOOT_ASK_MONEY:
      return read_money (value->text, currency, value, error);
    case UNSOOT_ASK_DAY:
      return read_day (value->text, value, error);
    case UNSOOT_ASK_PRESSURE:
      return read_pressure (value->text, value, error);
    case UNSOOT_ASK_COUNT:
      return read_count (value->text, value, error);
    }
  g_return_val_if_reached (FALSE);
}
