/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "contact.h"
#include "fuzz.h"
#include "targets.h"

static gboolean
is_blank (const char *text)
{
  return text[strspn (text, " \t\r\n")] == '\0';
}

/* What people leave around a number when they copy it says nothing. */
static void
check_surroundings (gboolean (*check) (const char *, GError **), const char *text, gboolean good)
{
  g_autofree char *around = g_strdup_printf (" %s ", text);
  FUZZ_CHECK (check (around, NULL) == good, "“%s”", around);
}

/* ITU-T E.164: at most fifteen digits. */
static void
check_phone (const char *phone)
{
  GError *error = NULL;
  gboolean good = unsoot_phone_check (phone, &error);
  fuzz_answer (good, &error);
  check_surroundings (unsoot_phone_check, phone, good);
  if (!good || is_blank (phone))
    return;
  guint digits = 0;
  const char *p = phone;
  for (; *p != '\0' && strchr ("xXeE#", *p) == NULL; p++)
    digits += g_ascii_isdigit (*p);
  FUZZ_CHECK (digits >= 7 && digits <= 15, "“%s”", phone);
  FUZZ_CHECK (g_str_is_ascii (phone), "“%s”", phone);
  FUZZ_CHECK (strpbrk (phone, ",;\n\r<>") == NULL, "“%s”", phone);
  FUZZ_CHECK (*p == '\0' || strpbrk (p, "0123456789") != NULL, "“%s”", phone);
}

/* RFC 5321, section 4.5.3.1: 64 octets before the @, 254 in all. */
static void
check_email (const char *email)
{
  GError *error = NULL;
  gboolean good = unsoot_email_check (email, &error);
  fuzz_answer (good, &error);
  if (!good || is_blank (email))
    return;
  const char *at = strchr (email, '@');
  FUZZ_CHECK (at != NULL && at == strrchr (email, '@'), "“%s”", email);
  FUZZ_CHECK (at > email && at - email <= 64 && strlen (email) <= 254, "“%s”", email);
  FUZZ_CHECK (strchr (at, '.') != NULL && g_utf8_validate (email, -1, NULL), "“%s”", email);
  FUZZ_CHECK (strpbrk (email, " \t\r\n,;<>") == NULL, "“%s”", email);
}

static void
check_po_number (const char *number)
{
  GError *error = NULL;
  gboolean good = unsoot_po_number_check (number, TRUE, "Fleet", &error);
  fuzz_answer (good, &error);
  FUZZ_CHECK (good == !is_blank (number), "“%s”", number);
  FUZZ_CHECK (unsoot_po_number_check (number, FALSE, "Fleet", NULL), "“%s”", number);
}

static void
check_plate (const char *plate)
{
  g_autofree char *shown = unsoot_plate_normalise (plate);
  FUZZ_CHECK ((shown != NULL) == g_utf8_validate (plate, -1, NULL), "“%s”", plate);
  if (shown == NULL)
    return;
  g_autofree char *twice = unsoot_plate_normalise (shown);
  FUZZ_CHECK (strcmp (twice, shown) == 0, "“%s” becomes “%s”", shown, twice);
  FUZZ_CHECK (strstr (shown, "  ") == NULL && *shown != ' ' && !g_str_has_suffix (shown, " "),
              "“%s”", shown);
}

void
fuzz_contact (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);

  check_phone (text);
  check_email (text);
  check_po_number (text);
  check_plate (text);
}
