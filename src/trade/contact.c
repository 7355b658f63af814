/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "contact.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "money.h"
#include "trade-error.h"

#define PHONE_MIN_DIGITS 7
#define PHONE_MAX_DIGITS 15
#define EMAIL_MAX_NAME 64
#define EMAIL_MAX 254

static gboolean
is_blank (const char *text)
{
  return text == NULL || text[strspn (text, " \t\r\n")] == '\0';
}

/* Length of the number in @phone, up to its extension: "x 12", "ext. 12", "#12". */
static gsize
number_length (const char *phone)
{
  return strcspn (phone, "eExX#");
}

static gboolean
is_extension (const char *tail)
{
  gsize word = g_ascii_strncasecmp (tail, "ext", 3) == 0 ? 3 : strspn (tail, "xX#");
  const char *p = tail + word + strspn (tail + word, ". ");

  if (*tail != '\0' && word != 3 && word != 1)
    return FALSE;

  return *tail == '\0' || (*p != '\0' && p[strspn (p, "0123456789 ")] == '\0');
}

static guint
count_digits (const char *text, gsize length)
{
  guint n = 0;

  for (gsize i = 0; i < length; i++)
    n += g_ascii_isdigit (text[i]) ? 1 : 0;
  return n;
}

gboolean
unsoot_phone_check (const char *phone, GError **error)
{
  g_autofree char *shown = NULL;
  gsize length = 0;
  guint digits = 0;

  if (is_blank (phone))
    return TRUE;
  shown = g_utf8_make_valid (phone, -1);
  phone += strspn (phone, " ");
  length = number_length (phone);
  digits = count_digits (phone, length);
  if (strspn (phone, "0123456789+-.()/ ") < length || !is_extension (phone + length)
      || strchr (phone + 1, '+') != NULL)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                 _ ("“%s” is not a phone number: digits, spaces, - . ( ) / and one + in front"),
                 shown);
  else if (digits < PHONE_MIN_DIGITS || digits > PHONE_MAX_DIGITS)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                 ngettext ("“%s” has %u digit; a phone number has 7 to 15",
                           "“%s” has %u digits; a phone number has 7 to 15", digits),
                 shown, digits);
  else
    return TRUE;
  return FALSE;
}

static gboolean
has_space_or_control (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_isspace (g_utf8_get_char (p)) || g_unichar_iscntrl (g_utf8_get_char (p)))
      return TRUE;
  return FALSE;
}

static gboolean
is_domain (const char *domain)
{
  const char *point = strrchr (domain, '.');

  return point != NULL && point[1] != '\0' && *domain != '.' && *domain != '-'
         && strstr (domain, "..") == NULL && strpbrk (domain, "@,;<>()[]\"\\") == NULL;
}

static gboolean
is_name (const char *email, gsize length)
{
  return length > 0 && length <= EMAIL_MAX_NAME && *email != '.' && email[length - 1] != '.'
         && g_strstr_len (email, (gssize) length, "..") == NULL
         && strcspn (email, ",;<>()[]\"\\") >= length;
}

gboolean
unsoot_email_check (const char *email, GError **error)
{
  g_autofree char *shown = NULL;
  const char *at = NULL;

  if (is_blank (email))
    return TRUE;
  at = strchr (email, '@');
  if (at != NULL && strlen (email) <= EMAIL_MAX && g_utf8_validate (email, -1, NULL)
      && !has_space_or_control (email) && is_name (email, (gsize) (at - email))
      && is_domain (at + 1))
    return TRUE;
  shown = g_utf8_make_valid (email, -1);
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               _ ("“%s” is not an e-mail address; it looks like name@place.example"), shown);
  return FALSE;
}

gboolean
unsoot_po_number_check (const char *po_number, gboolean required, const char *customer,
                        GError **error)
{
  if (!required || !is_blank (po_number))
    return TRUE;
  /* Translators: a customer's name */
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED,
               _ ("%s wants no work without a purchase-order number; ask for it and enter it"),
               customer);
  return FALSE;
}

gboolean
unsoot_po_limit_check (gint64 limit, gint64 amount, const char *currency, const char *customer,
                       GError **error)
{
  g_autofree char *covered = NULL, *asked = NULL;

  if (limit <= 0 || amount <= limit)
    return TRUE;
  covered = unsoot_money_format (limit, currency, UNSOOT_MONEY_POINT);
  asked = unsoot_money_format (amount, currency, UNSOOT_MONEY_POINT);
  /* Translators: a customer's name, then two amounts */
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED,
               _ ("One order of %s covers %s at most; this one would be %s. Split the work or ask "
                  "them to raise the limit."),
               customer, covered, asked);
  return FALSE;
}

char *
unsoot_plate_normalise (const char *plate)
{
  g_autofree char *upper = NULL;
  GString *out = NULL;

  if (!g_utf8_validate (plate, -1, NULL))
    return NULL;
  upper = g_utf8_strup (plate, -1);
  out = g_string_new (NULL);
  for (const char *p = upper; *p != '\0'; p = g_utf8_next_char (p))
    if (!g_unichar_isspace (g_utf8_get_char (p)))
      g_string_append_unichar (out, g_utf8_get_char (p));
    else if (out->len > 0 && out->str[out->len - 1] != ' ')
      g_string_append_c (out, ' ');
  return g_strchomp (g_string_free (out, FALSE));
}
