/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pick.h"

#include <glib/gi18n-lib.h>

#include "adapters.h"
#include "bookings.h"
#include "find.h"
#include "fluids.h"
#include "fold.h"
#include "invoices.h"
#include "jobs.h"
#include "lots.h"
#include "machines.h"
#include "services.h"
#include "shops.h"
#include "staff.h"

#define FEW 5

gboolean
unsoot_pick_number (const char *text, const char *what, gint64 least, gint64 *number,
                    GError **error)
{
  const char *digits = text[0] == '#' ? text + 1 : text;

  if (g_ascii_string_to_signed (digits, 10, least, G_MAXINT64, number, NULL))
    return TRUE;
  /* Translators: what was typed, then what it should have been, such as "JOB" */
  return unsoot_call_misused (error, _ ("“%s” is no number: %s is one."), text, what);
}

gboolean
unsoot_pick_job (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  gint64 number = 0;

  return unsoot_pick_number (text, _ ("JOB"), 1, &number, error)
         && unsoot_job_id_of (call->db, number, id, error);
}

gboolean
unsoot_pick_invoice (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  gint64 number = 0;

  return unsoot_pick_number (text, _ ("INVOICE"), 1, &number, error)
         && unsoot_invoice_id_of (call->db, number, id, error);
}

/* Something with a name to be picked from. */
typedef struct
{
  gint64 id;
  char *code; /* (nullable) */
  char *name;
} Choice;

static void
choice_clear (Choice *choice)
{
  g_free (choice->code);
  g_free (choice->name);
}

static GArray *
choices_new (void)
{
  GArray *choices = g_array_new (FALSE, FALSE, sizeof (Choice));

  g_array_set_clear_func (choices, (GDestroyNotify) choice_clear);
  return choices;
}

static void
choices_add (GArray *choices, gint64 id, const char *code, const char *name)
{
  Choice choice = { id, g_strdup (code), g_strdup (name) };

  g_array_append_val (choices, choice);
}

static gboolean
fail_to_pick (const char *text, const GArray *choices, GError **error)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < choices->len; i++)
    {
      const Choice *choice = &g_array_index (choices, Choice, i);

      g_string_append_printf (names, "%s%s", i > 0 ? ", " : "",
                              choice->code != NULL ? choice->code : choice->name);
    }
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
               /* Translators: what was typed, then what can be typed instead */
               _ ("“%s” is none, or not one alone, of these: %s."), text, names->str);
  return FALSE;
}

/* Its code or whole name, else the only name that begins so. */
static gboolean
pick_from (const GArray *choices, const char *text, gint64 *id, GError **error)
{
  g_autofree char *folded = unsoot_fold (text, error);
  guint begun = 0;

  if (folded == NULL)
    return FALSE;
  for (guint i = 0; i < choices->len; i++)
    {
      const Choice *choice = &g_array_index (choices, Choice, i);
      g_autofree char *code = choice->code != NULL ? unsoot_fold (choice->code, NULL) : NULL;
      g_autofree char *name = unsoot_fold (choice->name, NULL);

      if (g_strcmp0 (code, folded) == 0 || g_strcmp0 (name, folded) == 0)
        {
          *id = choice->id;
          return TRUE;
        }
      if (*folded != '\0' && name != NULL && g_str_has_prefix (name, folded) && ++begun == 1)
        *id = choice->id;
    }
  return begun == 1 || fail_to_pick (text, choices, error);
}

/* Where a row has what it is picked by; 0: it has no such member. */
typedef struct
{
  gsize active;
  gsize code;
  gsize name;
} Members;

static const char *
member_text (gconstpointer row, gsize offset)
{
  return offset != 0 ? G_STRUCT_MEMBER (char *, row, offset) : NULL;
}

/* Takes ROWS; NULL: listing them failed. */
static gboolean
pick_row (GPtrArray *rows, Members members, const char *text, gint64 *id, GError **error)
{
  g_autoptr (GArray) choices = choices_new ();

  if (rows == NULL)
    return FALSE;
  for (guint i = 0; i < rows->len; i++)
    if (G_STRUCT_MEMBER (gboolean, rows->pdata[i], members.active))
      choices_add (choices, ((const UnsootRecordHead *) rows->pdata[i])->id,
                   member_text (rows->pdata[i], members.code),
                   member_text (rows->pdata[i], members.name));
  g_ptr_array_unref (rows);
  return pick_from (choices, text, id, error);
}

gboolean
unsoot_pick_service (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  const Members members
      = { offsetof (UnsootServiceRow, active), 0, offsetof (UnsootServiceRow, name) };

  return pick_row (unsoot_service_list (call->db, error), members, text, id, error);
}

gboolean
unsoot_pick_bay (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  const Members members = { offsetof (UnsootBayRow, active), 0, offsetof (UnsootBayRow, name) };

  return pick_row (unsoot_bay_list (call->db, error), members, text, id, error);
}

gboolean
unsoot_pick_machine (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  const Members members
      = { offsetof (UnsootMachineRow, active), 0, offsetof (UnsootMachineRow, name) };

  return pick_row (unsoot_machine_list (call->db, error), members, text, id, error);
}

gboolean
unsoot_pick_fluid (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  const Members members = { offsetof (UnsootFluidRow, active), offsetof (UnsootFluidRow, code),
                            offsetof (UnsootFluidRow, name) };

  return pick_row (unsoot_fluid_list (call->db, error), members, text, id, error);
}

gboolean
unsoot_pick_supplier (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_supplier_list (call->db, error);
  g_autoptr (GArray) choices = choices_new ();

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    choices_add (choices, ((UnsootSupplierRow *) rows->pdata[i])->id, NULL,
                 ((UnsootSupplierRow *) rows->pdata[i])->name);
  return rows != NULL && pick_from (choices, text, id, error);
}

gboolean
unsoot_pick_person (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  g_autoptr (UnsootStaffRow) person = unsoot_staff_find (call->db, text, error);

  if (person == NULL)
    return FALSE;
  *id = person->id;
  return TRUE;
}

static gboolean
fail_among (const char *text, GPtrArray *found, UnsootFoundKind kind, GError **error)
{
  g_autoptr (GString) titles = g_string_new (NULL);

  for (guint i = 0; i < found->len; i++)
    {
      const UnsootFound *one = found->pdata[i];

      if (one->kind == kind)
        g_string_append_printf (titles, "%s%s", titles->len > 0 ? "; " : "", one->title);
    }
  if (titles->len == 0)
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                 _ ("Nothing is found by “%s”."), text);
  else
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                 _ ("“%s” may mean more than one: %s. Type more of it."), text, titles->str);
  return FALSE;
}

/* The only one that is found, or the only one that is meant whole. */
static gboolean
pick_found (UnsootCall *call, UnsootFoundKind kind, const char *text, gint64 *id, GError **error)
{
  g_autoptr (GPtrArray) found = unsoot_find (call->db, text, FEW, error);
  guint n = 0, whole = 0;
  gint64 only = 0;

  if (found == NULL)
    return FALSE;
  for (guint i = 0; i < found->len; i++)
    {
      const UnsootFound *one = found->pdata[i];

      if (one->kind != kind)
        continue;
      n++;
      if (one->fit == UNSOOT_FOUND_WHOLE && ++whole == 1)
        *id = one->row;
      only = one->row;
    }
  if (n == 1)
    *id = only;
  return n == 1 || whole == 1 || fail_among (text, found, kind, error);
}

gboolean
unsoot_pick_vehicle (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  return pick_found (call, UNSOOT_FOUND_VEHICLE, text, id, error);
}

static gboolean
add_items (UnsootCall *call, gint64 type_id, GArray *choices, GError **error)
{
  g_autoptr (GPtrArray) items = unsoot_adapter_item_list (call->db, type_id, error);

  for (guint i = 0; items != NULL && i < items->len; i++)
    {
      const UnsootAdapterItemRow *item = items->pdata[i];

      choices_add (choices, item->id, NULL, item->label);
    }
  return items != NULL;
}

gboolean
unsoot_pick_item (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  g_autoptr (GPtrArray) types = unsoot_adapter_type_list (call->db, error);
  g_autoptr (GArray) choices = choices_new ();

  if (types == NULL)
    return FALSE;
  for (guint i = 0; i < types->len; i++)
    if (!add_items (call, ((const UnsootAdapterTypeRow *) types->pdata[i])->id, choices, error))
      return FALSE;
  return pick_from (choices, text, id, error);
}

/* How many lots are called TEXT, alone or behind their fluid's code. */
static gboolean
match_lots (UnsootCall *call, const UnsootFluidRow *fluid, const char *text, gint64 *id,
            guint *matches, GError **error)
{
  g_autofree char *today = unsoot_shop_date (call->shop, call->who.now);
  g_autoptr (GPtrArray) lots = unsoot_lot_list (call->db, fluid->id, today, error);

  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const UnsootLotRow *lot = ((const UnsootLotStock *) lots->pdata[i])->lot;
      g_autofree char *full = g_strdup_printf ("%s %s", fluid->code, lot->code);

      if (g_ascii_strcasecmp (lot->code, text) != 0 && g_ascii_strcasecmp (full, text) != 0)
        continue;
      *id = lot->id;
      *matches += 1;
    }
  return lots != NULL;
}

gboolean
unsoot_pick_lot (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  g_autoptr (GPtrArray) fluids = unsoot_fluid_list (call->db, error);
  guint matches = 0;

  if (fluids == NULL)
    return FALSE;
  for (guint i = 0; i < fluids->len; i++)
    if (!match_lots (call, fluids->pdata[i], text, id, &matches, error))
      return FALSE;
  if (matches == 1)
    return TRUE;
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
               matches == 0 ? _ ("There is no lot “%s”.")
                            : _ ("More than one fluid has a lot “%s”: put the fluid's code "
                                 "before it."),
               text);
  return FALSE;
}
