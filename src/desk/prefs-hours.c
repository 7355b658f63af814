/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "civil-words.h"
#include "clock-text.h"
#include "prefs-edit.h"
#include "shops.h"

enum
{
  WEEKDAY,
  OPENS,
  CLOSES,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const char *const weekdays[]
    = { N_ ("Mon"), N_ ("Tue"), N_ ("Wed"), N_ ("Thu"), N_ ("Fri"), N_ ("Sat"), N_ ("Sun"), NULL };

static const UnsootDeedForm form = {
  .slug = "open-hours",
  .title = N_ ("Opening hours"),
  .verb = N_ ("Save"),
  .done = N_ ("The hours are saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_FIELDS,
  .fields = {
    [WEEKDAY] = { .label = N_ ("Day"), .kind = UNSOOT_ASK_CHOICE, .words = weekdays },
    [OPENS] = { .label = N_ ("Opens"), .hint = N_ ("As 07:30") },
    [CLOSES] = { .label = N_ ("Closes"), .hint = N_ ("As 17:30; with a break at noon, enter the "
                                                     "day twice") },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootOpenHoursRow *hours = record;

  if (field == WEEKDAY)
    return g_strdup_printf ("%d", (int) hours->weekday - 1);
  return unsoot_clock_text ((int) (field == OPENS ? hours->opens_minute : hours->closes_minute));
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootOpenHoursRow *hours = record;
  int opens, closes;

  if (!unsoot_clock_parse (order->values[OPENS].text, &opens, error)
      || !unsoot_clock_parse (order->values[CLOSES].text, &closes, error))
    return FALSE;
  hours->weekday = order->values[WEEKDAY].number + 1;
  hours->opens_minute = opens;
  hours->closes_minute = closes;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_open_hours_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_open_hours_row_type, text, apply, save };

static gboolean
drop (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootOpenHoursRow) hours
      = unsoot_rows_get (db, &unsoot_open_hours_row_type, order->record, error);

  return hours != NULL && unsoot_open_hours_drop (db, who, hours, error);
}

static const UnsootDeedForm drop_form = {
  .slug = "open-hours-drop",
  .title = N_ ("Shut at these hours"),
  .verb = N_ ("Remove"),
  .done = N_ ("The hours are removed"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .destroys = TRUE,
  .carry_out = drop,
};

void
unsoot_prefs_card_hours (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Opening hours"));

  for (guint i = 0; i < file->hours->len; i++)
    {
      const UnsootOpenHoursRow *hours = g_ptr_array_index (file->hours, i);
      const char *day = unsoot_weekday_words ((int) hours->weekday);
      g_autofree char *opens = unsoot_clock_text ((int) hours->opens_minute);
      g_autofree char *closes = unsoot_clock_text ((int) hours->closes_minute);
      g_autofree char *value = g_strdup_printf ("%s–%s", opens, closes);
      g_autofree char *about = g_strdup_printf ("%s, %s", day, value);
      GtkWidget *row = unsoot_prefs_row_new (session, &edit, day, NULL, value, hours);

      unsoot_prefs_row_add_drop (row, session, &drop_form, hours->id, about);
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  unsoot_prefs_list_show (list, card, _ ("None yet. Without hours nothing can be booked."));
  gtk_box_append (GTK_BOX (card), unsoot_prefs_add_button_new (session, &edit, _ ("Add hours…")));
}
