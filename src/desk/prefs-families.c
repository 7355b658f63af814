/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "families.h"
#include "format.h"
#include "prefs-edit.h"
#include "prefs-fitted.h"
#include "procedure-dialog.h"
#include "procedure-row.h"
#include "unit.h"
#include "weight-class.h"

#include <adwaita.h>

#include "deed-button.h"

enum
{
  NAME,
  MAKE,
  ENGINE,
  SIZE,
  LIFT_PUMP,
  LEAST,
  MOST,
  N_FIELDS
};

/* In the order of the choices. */
enum
{
  LIFT_BYPASS,
  LIFT_UNPLUG,
  LIFT_NONE
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const UnsootSizeClass sizes[] = { UNSOOT_SIZE_SMALL, UNSOOT_SIZE_LIGHT, UNSOOT_SIZE_HEAVY };
static const char *const size_words[]
    = { N_ ("Below ¾-ton"), N_ ("¾-ton and one-ton"), N_ ("Larger"), NULL };
static const char *const lift_words[]
    = { N_ ("Yes, with the bypass hose"), N_ ("Yes, unplugged: its maker forbids the bypass"),
        N_ ("None"), NULL };

static const UnsootDeedForm form = {
  .slug = "family",
  .title = N_ ("Engine family"),
  .verb = N_ ("Save"),
  .done = N_ ("The engine family is saved"),
  .deed = UNSOOT_DEED_EDIT_FAMILY,
  .n_fields = N_FIELDS,
  .fields = {
    [NAME] = { .label = N_ ("Name"), .hint = N_ ("As the shop calls it: make, model and engine") },
    [MAKE] = { .label = N_ ("Make"), .optional = TRUE },
    [ENGINE] = { .label = N_ ("Engine"), .optional = TRUE, .hint = N_ ("As people say it: 5.1") },
    [SIZE] = { .label = N_ ("Size class"), .kind = UNSOOT_ASK_CHOICE, .words = size_words },
    [LIFT_PUMP] = { .label = N_ ("Lift pump"), .kind = UNSOOT_ASK_CHOICE, .words = lift_words },
    [LEAST] = { .label = N_ ("Supply pressure, at least"), .kind = UNSOOT_ASK_PRESSURE,
                .optional = TRUE,
                .hint = N_ ("While running, as 6 psi; from the vehicle maker’s information") },
    [MOST] = { .label = N_ ("Supply pressure, at most"), .kind = UNSOOT_ASK_PRESSURE,
               .optional = TRUE, .hint = N_ ("Without a window it can’t be run") },
  },
  .carry_out = carry_out,
};

static char *
or_empty (const char *text)
{
  return g_strdup (text != NULL ? text : "");
}

static char *
pressure_text (double pa)
{
  g_autofree char *number = NULL;

  if (isnan (pa))
    return g_strdup ("");
  number = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, pa), 6);
  return g_strdup_printf ("%s psi", number);
}

static int
size_number (const char *slug)
{
  UnsootSizeClass size;

  for (int i = 0; unsoot_size_class_find (slug, &size) && i < (int) G_N_ELEMENTS (sizes); i++)
    if (sizes[i] == size)
      return i;
  return 1;
}

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootFamilyRow *family = record;

  switch (field)
    {
    case NAME:
      return or_empty (family->name);
    case MAKE:
      return or_empty (family->make);
    case ENGINE:
      return or_empty (family->engine);
    case SIZE:
      return g_strdup_printf ("%d", size_number (family->size_class));
    case LIFT_PUMP:
      return g_strdup_printf ("%d", !family->lift_pump         ? LIFT_NONE
                                    : family->lift_pump_bypass ? LIFT_BYPASS
                                                               : LIFT_UNPLUG);
    case LEAST:
      return pressure_text (family->window_min_pa);
    default:
      return pressure_text (family->window_max_pa);
    }
}

/* The make and the engine may be left open, but not unknown to the store. */
static void
put (char **member, const UnsootDeedOrder *order, gsize field)
{
  g_free (*member);
  *member = or_empty (unsoot_deed_text (order, field));
}

static double
pressure_of (const UnsootDeedOrder *order, gsize field)
{
  return unsoot_deed_text (order, field) != NULL ? order->values[field].real : (double) NAN;
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootFamilyRow *family = record;
  const gint64 lift = order->values[LIFT_PUMP].number;

  put (&family->name, order, NAME);
  put (&family->make, order, MAKE);
  put (&family->engine, order, ENGINE);
  g_free (family->size_class);
  family->size_class = g_strdup (unsoot_size_class_slug (sizes[order->values[SIZE].number]));
  family->lift_pump = lift != LIFT_NONE;
  family->lift_pump_bypass = lift == LIFT_BYPASS;
  family->window_min_pa = pressure_of (order, LEAST);
  family->window_max_pa = pressure_of (order, MOST);
  if (family->id == 0)
    unsoot_prefs_fitted_begin (family);
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_family_save (db, who, record, NULL, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_family_row_type, text, apply, save };

/* "6–10 psi · Both sides", or what is missing. */
static char *
detail_of (const UnsootFamilyRow *family, const UnsootPrefsFile *file)
{
  g_autoptr (GString) detail = g_string_new (NULL);
  gboolean any = FALSE;

  if (isnan (family->window_min_pa))
    g_string_append (detail, _ ("no pressure window: can’t be run"));
  else
    {
      g_autofree char *least
          = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, family->window_min_pa), 1);
      g_autofree char *most
          = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, family->window_max_pa), 1);
      g_string_append_printf (detail, "%s–%s psi", least, most);
    }
  for (guint i = 0; i < file->procedures->len; i++)
    {
      const UnsootProcedureRow *procedure = g_ptr_array_index (file->procedures, i);
      if (procedure->family_id != family->id)
        continue;
      any = TRUE;
      /* Translators: a procedure’s title and its version */
      g_string_append_printf (detail, _ (" · %s, version %d"), procedure->title,
                              (int) procedure->number);
    }
  if (!any)
    g_string_append_printf (detail, " · %s", _ ("no procedure yet"));
  return g_string_free (g_steal_pointer (&detail), FALSE);
}

static void
procedure_cb (GtkWidget *button, UnsootSession *session)
{
  const UnsootFamilyRow *family = g_object_get_data (G_OBJECT (button), "family");

  unsoot_procedure_dialog_open (button, session, family);
}

static GtkWidget *
procedure_button_new (UnsootSession *session, const UnsootFamilyRow *family)
{
  GtkWidget *button = unsoot_deed_button_new (session, UNSOOT_DEED_EDIT_PROCEDURE, _ ("Procedure…"),
                                              family->name);

  gtk_widget_add_css_class (button, "flat");
  g_object_set_data_full (G_OBJECT (button), "family",
                          unsoot_record_copy (&unsoot_family_row_type, family),
                          (GDestroyNotify) unsoot_family_row_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (procedure_cb), session, 0);
  return button;
}

void
unsoot_prefs_card_families (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Engine families"));

  for (guint i = 0; i < file->families->len; i++)
    {
      const UnsootFamilyRow *family = g_ptr_array_index (file->families, i);
      g_autofree char *detail = detail_of (family, file);
      GtkWidget *row = unsoot_prefs_row_new (session, &edit, family->name, detail, NULL, family);

      unsoot_prefs_row_add_change (row, session, &unsoot_prefs_fitted, _ ("Fitted…"), family->name,
                                   family);
      adw_action_row_add_suffix (ADW_ACTION_ROW (row), procedure_button_new (session, family));
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  unsoot_prefs_list_show (list, card,
                          _ ("None yet. Doses, adapters and procedures go by the engine family."));
  gtk_box_append (GTK_BOX (card),
                  unsoot_prefs_add_button_new (session, &edit, _ ("Add an engine family…")));
}
