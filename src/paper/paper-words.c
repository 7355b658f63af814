/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-words.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>

#include "civil-words.h"
#include "money.h"
#include "paper-error.h"

#define NO_BREAK "\u00A0"

char *
unsoot_paper_day (const char *iso)
{
  int day;

  if (iso == NULL || *iso == '\0')
    return NULL;
  return unsoot_day_parse (iso, &day, NULL) ? unsoot_day_words (day) : g_strdup (iso);
}

char *
unsoot_paper_moment (const UnsootJobFile *file, gint64 at)
{
  const UnsootLocal local = unsoot_local_from_unix (at, file->utc_offset_minutes);

  return at != 0 && local.day != 0 ? unsoot_moment_words (&local) : NULL;
}

char *
unsoot_paper_moment_day (const UnsootJobFile *file, gint64 at)
{
  const UnsootLocal local = unsoot_local_from_unix (at, file->utc_offset_minutes);

  return at != 0 && local.day != 0 ? unsoot_day_words (local.day) : NULL;
}

char *
unsoot_paper_clock (const UnsootJobFile *file, gint64 at)
{
  const UnsootLocal local = unsoot_local_from_unix (at, file->utc_offset_minutes);

  return at != 0 ? g_strdup_printf ("%02d:%02d", local.hour, local.minute) : NULL;
}

static gboolean
writes_comma (void)
{
  return localeconv ()->decimal_point[0] == ',';
}

char *
unsoot_paper_money (gint64 minor, const char *currency)
{
  return unsoot_money_format (minor, currency,
                              writes_comma () ? UNSOOT_MONEY_COMMA : UNSOOT_MONEY_POINT);
}

char *
unsoot_paper_quantity (gint64 milli)
{
  GString *text = g_string_new (milli < 0 ? "\u2212" : NULL);
  const gint64 size = ABS (milli);

  g_string_append_printf (text, "%" G_GINT64_FORMAT, size / 1000);
  if (size % 1000 != 0)
    {
      g_string_append_printf (text, "%c%03d", writes_comma () ? ',' : '.', (int) (size % 1000));
      while (text->str[text->len - 1] == '0')
        g_string_truncate (text, text->len - 1);
    }
  return g_string_free (text, FALSE);
}

char *
unsoot_paper_number (double value, int decimals)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *format = g_strdup_printf ("%%.%df", decimals);
  const char *plain = g_ascii_formatd (digits, sizeof digits, format, fabs (value));
  g_autofree char *text
      = g_strconcat (value < 0 && strtod (plain, NULL) > 0 ? "\u2212" : "", plain, NULL);

  return writes_comma () ? g_strdelimit (g_steal_pointer (&text), ".", ',')
                         : g_steal_pointer (&text);
}

char *
unsoot_paper_rate (gint64 milli_percent)
{
  g_autofree char *figure = unsoot_paper_quantity (milli_percent);

  return g_strconcat (figure, NO_BREAK, "%", NULL);
}

char *
unsoot_paper_serial (gint64 number)
{
  return g_strdup_printf ("%" G_GINT64_FORMAT, number);
}

char *
unsoot_paper_whole (gint64 number)
{
  g_autofree char *digits = g_strdup_printf ("%" G_GINT64_FORMAT, ABS (number));
  const gsize length = strlen (digits);
  GString *text = g_string_new (number < 0 ? "\u2212" : NULL);

  for (gsize i = 0; i < length; i++)
    {
      if (i > 0 && (length - i) % 3 == 0)
        g_string_append (text, NO_BREAK);
      g_string_append_c (text, digits[i]);
    }
  return g_string_free (text, FALSE);
}

char *
unsoot_paper_join (const char *separator, ...)
{
  GString *text = g_string_new (NULL);
  const char *part;
  va_list parts;

  va_start (parts, separator);
  /* A part that is missing is "", never NULL: NULL ends the list. */
  while ((part = va_arg (parts, const char *)) != NULL)
    if (*part != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? separator : "", part);
  va_end (parts);
  return g_string_free (text, FALSE);
}

static const char *
filled (const char *text)
{
  return text != NULL ? text : "";
}

/* @text, which is taken, with its spaces made such that no line ends at them. */
static char *
unbroken (char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  g_free (text);
  return g_strjoinv (NO_BREAK, words);
}

char *
unsoot_paper_vehicle (const UnsootVehicleRow *vehicle)
{
  g_autofree char *year
      = vehicle->year > 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, vehicle->year) : g_strdup ("");
  g_autofree char *kind = unsoot_paper_join (
      " ", year, filled (vehicle->make), filled (vehicle->model), filled (vehicle->engine), NULL);
  /* Translators: a fleet's number for a vehicle */
  g_autofree char *unit = unbroken (*filled (vehicle->unit_number)
                                        ? g_strdup_printf (_ ("unit %s"), vehicle->unit_number)
                                        : g_strdup (""));
  g_autofree char *plate = unbroken (
      *filled (vehicle->plate) ? g_strdup_printf (_ ("plate %s"), vehicle->plate) : g_strdup (""));

  return unsoot_paper_join (" · ", kind, unit, plate, NULL);
}

/* The last one; 0: of any job. */
static const UnsootMeterReadingRow *
meter_read (const UnsootJobFile *file, const char *kind, gint64 job_id)
{
  for (guint i = file->meters->len; i > 0; i--)
    {
      const UnsootMeterReadingRow *meter = g_ptr_array_index (file->meters, i - 1);
      if (g_strcmp0 (meter->kind, kind) == 0 && (job_id == 0 || meter->job_id == job_id))
        return meter;
    }
  return NULL;
}

static char *
meter_words (const UnsootMeterReadingRow *meter)
{
  g_autofree char *day = unsoot_paper_day (meter->taken_on);
  g_autofree char *figure = unsoot_paper_whole ((gint64) floor (meter->typed + 0.5));

  /* Translators: a meter's figure, its unit, the day it was read */
  return g_strdup_printf (_ ("%s %s on %s"), figure, meter->unit, day);
}

char *
unsoot_paper_meter_of_job (const UnsootJobFile *file, const char *kind)
{
  const UnsootMeterReadingRow *meter = meter_read (file, kind, file->job->id);

  return meter != NULL ? meter_words (meter) : NULL;
}

char *
unsoot_paper_meter (const UnsootJobFile *file, const char *kind)
{
  const UnsootMeterReadingRow *meter = meter_read (file, kind, file->job->id);

  if (meter == NULL)
    meter = meter_read (file, kind, 0);
  return meter != NULL ? meter_words (meter) : NULL;
}

static const UnsootAddressRow *
billing_address (const UnsootJobFile *file)
{
  for (guint i = 0; i < file->addresses->len; i++)
    {
      const UnsootAddressRow *address = g_ptr_array_index (file->addresses, i);
      if (g_strcmp0 (address->label, "billing") == 0)
        return address;
    }
  return file->addresses->len > 0 ? g_ptr_array_index (file->addresses, 0) : NULL;
}

char *
unsoot_paper_customer (const UnsootJobFile *file)
{
  const UnsootAddressRow *address = billing_address (file);
  g_autofree char *place
      = address != NULL ? unsoot_paper_join (" ", filled (address->town), filled (address->region),
                                             filled (address->postcode), NULL)
                        : g_strdup ("");

  return unsoot_paper_join ("\n", filled (file->customer->name), filled (file->customer->contact),
                            address != NULL ? filled (address->street) : "", place, NULL);
}

char *
unsoot_paper_phones (const UnsootJobFile *file)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < file->phones->len; i++)
    {
      const UnsootPhoneRow *phone = g_ptr_array_index (file->phones, i);
      g_string_append_printf (text, "%s%s%s%s", i > 0 ? "\n" : "", filled (phone->number),
                              *filled (phone->label) ? " " : "", filled (phone->label));
    }
  return g_string_free (text, FALSE);
}

UnsootPageHead
unsoot_paper_head (const UnsootJobFile *file, char *title, char *number, char *date, gint64 at)
{
  return (UnsootPageHead){
    .shop = file->shop,
    .title = title,
    .number = number != NULL ? number : unsoot_paper_serial (file->job->number),
    .subject = unsoot_paper_vehicle (file->vehicle),
    .date = date,
    .at = at,
  };
}

gint64
unsoot_paper_as_of (const UnsootJobFile *file)
{
  gint64 at = MAX (file->job->made_at, file->job->arrived_at);

  for (guint i = 0; i < file->status->len; i++)
    at = MAX (at, ((UnsootJobStatusRow *) g_ptr_array_index (file->status, i))->at);
  for (guint i = 0; i < file->run_events->len; i++)
    at = MAX (at, ((UnsootRunEventRow *) g_ptr_array_index (file->run_events, i))->at);
  for (guint i = 0; i < file->readings->len; i++)
    at = MAX (at, ((UnsootReadingRow *) g_ptr_array_index (file->readings, i))->at);
  return at;
}

gboolean
unsoot_paper_check (const UnsootJobFile *file, GError **error)
{
  const char *missing = file->shop == NULL       ? _ ("the shop's own name and address")
                        : file->job == NULL      ? _ ("the job itself")
                        : file->customer == NULL ? _ ("its customer")
                        : file->vehicle == NULL  ? _ ("its vehicle")
                                                 : NULL;

  if (missing == NULL)
    return TRUE;
  g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_RECORD,
               /* Translators: what is missing: "its customer" */
               _ ("The paper can't be made: the job's file lacks %s."), missing);
  return FALSE;
}
