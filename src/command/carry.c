/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "carry.h"

#include <glib/gi18n-lib.h>

#include "carry-private.h"
#include "finishes.h"
#include "invoices.h"
#include "jobs.h"
#include "paper-write.h"
#include "quotes.h"
#include "staff.h"
#include "vehicles.h"
#include "when.h"

#define MINUTE 60

static const UnsootAnswerColumn deed_columns[] = {
  { "at", N_ ("When"), FALSE },
  { "by", N_ ("Who"), FALSE },
  { "deed", N_ ("What"), FALSE },
  { NULL },
};

/* A script gets the deeds as one table, a person sees each as it is done. Takes @deed. */
void
unsoot_carry_tell (UnsootCarry *carry, const UnsootStaffRow *by, char *deed)
{
  UnsootCall *call = carry->call;
  g_autofree char *taken = deed;
  g_autofree char *when = unsoot_when_words (call->shop, call->who.now);

  if (!call->json)
    {
      g_print ("%s  %s  %s\n", when, by->initials, deed);
      return;
    }
  unsoot_answer_cell (carry->deeds, unsoot_call_moment (call, call->who.now));
  unsoot_answer_cell (carry->deeds, unsoot_cell_text (by->initials));
  unsoot_answer_cell (carry->deeds, unsoot_cell_text (deed));
}

void
unsoot_carry_act (UnsootCarry *carry, const UnsootStaffRow *person, gint64 seconds)
{
  carry->call->who.staff_id = person->id;
  carry->call->who.now += seconds;
}

static UnsootStaffRow *
someone_with (UnsootCall *call, const char *role, GError **error)
{
  g_autoptr (GPtrArray) people = unsoot_staff_list (call->db, error);

  if (people == NULL)
    return NULL;
  for (guint i = 0; i < people->len; i++)
    {
      const UnsootStaffRow *person = people->pdata[i];

      if (person->active && g_strcmp0 (person->role, role) == 0)
        return unsoot_record_copy (&unsoot_staff_row_type, person);
    }
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
               _ ("Nobody in the demo shop is its %s."), role);
  return NULL;
}

static gboolean
authorise (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  gint64 minor = 0;

  unsoot_carry_act (carry, carry->advisor, 20 * MINUTE);
  if (!unsoot_job_authorise (call->db, &call->who, carry->job_id, carry->contact, "phone", 0, NULL,
                             NULL, error)
      || !unsoot_job_authorised_minor (call->db, carry->job_id, &minor, error))
    return FALSE;
  g_autofree char *amount = unsoot_call_money_words (call, minor);
  unsoot_carry_tell (carry, carry->advisor,
                     /* Translators: a name, then an amount */
                     g_strdup_printf (_ ("%s authorises %s by phone"), carry->contact, amount));
  return TRUE;
}

static gboolean
finish (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;

  unsoot_carry_act (carry, carry->technician, 6 * MINUTE);
  if (!unsoot_job_finish (call->db, &call->who, carry->job_id, carry->technician->name, error))
    return FALSE;
  unsoot_carry_tell (carry, carry->technician,
                     g_strdup (_ ("The engine is whole and signed for; fluid and tanks posted")));
  return TRUE;
}

static gboolean
invoice_and_pay (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  gint64 minor = 0;

  unsoot_carry_act (carry, carry->advisor, 10 * MINUTE);
  carry->invoice_id = unsoot_job_invoice (call->db, &call->who, carry->job_id, error);
  if (carry->invoice_id == 0
      || !unsoot_invoice_open_minor (call->db, carry->invoice_id, &minor, error))
    return FALSE;
  g_autofree char *amount = unsoot_call_money_words (call, minor);
  unsoot_carry_tell (carry, carry->advisor, g_strdup_printf (_ ("Invoiced: %s"), amount));
  unsoot_carry_act (carry, carry->advisor, 5 * MINUTE);
  if (unsoot_invoice_pay (call->db, &call->who, carry->invoice_id, minor, "card", NULL, NULL, error)
      == 0)
    return FALSE;
  unsoot_carry_tell (carry, carry->advisor, g_strdup_printf (_ ("Paid by card: %s"), amount));
  return TRUE;
}

/* Each paper is written when it is due, as a shop would print it. */
static gboolean
write_paper (UnsootCarry *carry, UnsootPaper paper, GError **error)
{
  g_autofree char *remark = NULL;
  char *path = unsoot_paper_write (carry->call, paper, carry->job_id, carry->invoice_id,
                                   carry->folder, NULL, &remark, error);

  if (path != NULL)
    g_ptr_array_add (carry->papers, path);
  return path != NULL;
}

static gboolean
carry_all (UnsootCarry *carry, GError **error)
{
  return (carry->advisor = someone_with (carry->call, "advisor", error)) != NULL
         && (carry->technician = someone_with (carry->call, "technician", error)) != NULL
         && unsoot_carry_quote (carry, error) && write_paper (carry, UNSOOT_PAPER_ESTIMATE, error)
         && authorise (carry, error) && unsoot_carry_book (carry, error)
         && unsoot_carry_arrive (carry, error)
         && write_paper (carry, UNSOOT_PAPER_WORK_ORDER, error)
         && unsoot_carry_readings (carry, FALSE, error) && unsoot_carry_run (carry, error)
         && unsoot_carry_readings (carry, TRUE, error) && finish (carry, error)
         && write_paper (carry, UNSOOT_PAPER_CUSTOMER_REPORT, error)
         && invoice_and_pay (carry, error) && write_paper (carry, UNSOOT_PAPER_INVOICE, error);
}

gboolean
unsoot_carry (UnsootCall *call, const char *folder, GError **error)
{
  UnsootCarry carry
      = { .call = call, .folder = folder, .papers = g_ptr_array_new_with_free_func (g_free) };

  if (call->json)
    carry.deeds = unsoot_answer_table (call->answer, "deeds", _ ("Deeds"), deed_columns);
  gboolean done = carry_all (&carry, error);

  unsoot_answer_list (call->answer, "papers", _ ("Papers"), carry.papers);
  unsoot_answer_put (call->answer, "file", _ ("Book"),
                     unsoot_cell_text (unsoot_db_path (call->db)));

  g_clear_pointer (&carry.advisor, unsoot_staff_row_free);
  g_clear_pointer (&carry.technician, unsoot_staff_row_free);
  g_free (carry.contact);
  g_ptr_array_unref (carry.papers);
  return done;
}
