/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hand-deeds.h"

#include <adwaita.h>

#include "first-record.h"
#include "fluid-deeds.h"
#include "fluid-file.h"
#include "job-cards.h"
#include "lots.h"
#include "machine-deeds.h"
#include "machine-file.h"
#include "path.h"
#include "stock.h"
#include "supply-deeds.h"

/* What of the book a deed is filled from; read on the worker, shown on the main loop. */
typedef struct
{
  UnsootFluidFile *fluid;
  UnsootMachineFile *machine;
  UnsootJobViewFile *job;
  char *today; /* ISO */
} Found;

static void
found_free (gpointer data)
{
  Found *found = data;

  if (found == NULL)
    return;
  g_clear_pointer (&found->fluid, unsoot_fluid_file_free);
  g_clear_pointer (&found->machine, unsoot_machine_file_free);
  g_clear_pointer (&found->job, unsoot_job_view_file_unref);
  g_free (found->today);
  g_free (found);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Found, found_free)

/* A line of which the deed is read. */
typedef struct
{
  const struct HandDeed *deed;
  GtkWidget *over;
  UnsootSession *session;
  gint64 record;
  gint64 now;
} Opening;

typedef struct HandDeed
{
  UnsootHandKind kind;
  UnsootDeed deed;
  gboolean (*read) (UnsootDb *db, const Opening *opening, Found *found, GError **error);
  void (*open) (const Opening *opening, const Found *found);
} HandDeed;

static gboolean
read_fluid (UnsootDb *db, const Opening *opening, Found *found, GError **error)
{
  found->fluid = unsoot_fluid_file_load (db, opening->record, found->today, opening->now, error);
  return found->fluid != NULL;
}

/* What is on order already is called about. */
static void
open_order (const Opening *opening, const Found *found)
{
  const UnsootFluidSupply *supply = found->fluid->supply;

  if (supply->suggestion.wanted_ml > 0 || supply->orders->len == 0)
    unsoot_supply_place_open (opening->over, opening->session, supply, found->fluid->suppliers);
}

static gboolean
read_machine (UnsootDb *db, const Opening *opening, Found *found, GError **error)
{
  found->machine = unsoot_machine_file_load (db, opening->record, error);
  return found->machine != NULL;
}

static void
open_gauge (const Opening *opening, const Found *found)
{
  const UnsootGaugeCheckRow *next
      = found->machine->gauges->len > 0 ? found->machine->gauges->pdata[0] : NULL;

  if (unsoot_machine_gauge_due (found->machine, found->today))
    unsoot_gauge_check_open (opening->over, opening->session, found->machine->machine,
                             next != NULL ? next->gauge : NULL);
}

static void
open_hoses (const Opening *opening, const Found *found)
{
  if (unsoot_machine_hoses_due (found->machine, found->today))
    unsoot_hoses_open (opening->over, opening->session, found->machine->machine);
}

static gboolean
read_job (UnsootDb *db, const Opening *opening, Found *found, GError **error)
{
  found->job = unsoot_job_view_file_load (db, opening->record, opening->now, error);
  return found->job != NULL;
}

static void
open_invoice (const Opening *opening, const Found *found)
{
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;

  if (unsoot_job_status_find (found->job->file->job->status, &status) && status == UNSOOT_JOB_DONE
      && found->job->bill != NULL)
    unsoot_job_invoice_open (opening->over, opening->session, found->job);
}

static gboolean
read_lot (UnsootDb *db, const Opening *opening, Found *found, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, opening->record, error);

  if (lot == NULL)
    return FALSE;
  found->fluid = unsoot_fluid_file_load (db, lot->fluid_id, found->today, opening->now, error);
  return found->fluid != NULL;
}

static gboolean
is_over (const UnsootLotStock *stock, const char *today)
{
  const UnsootStockLot lot = { .expires = stock->lot->expires_on,
                               .opened = stock->opened,
                               .opened_until = stock->opened_until };
  const char *last = unsoot_stock_last_day (&lot);

  return last != NULL && g_strcmp0 (last, today) < 0;
}

/* One that is still good is used first: that is told, and nothing is posted. */
static void
open_waste (const Opening *opening, const Found *found)
{
  for (guint i = 0; i < found->fluid->lots->len; i++)
    {
      const UnsootLotStock *stock = found->fluid->lots->pdata[i];
      if (stock->lot->id == opening->record && is_over (stock, found->today))
        unsoot_fluid_deed_open (UNSOOT_FLUID_WASTE, opening->over, opening->session,
                                found->fluid->supply->fluid, found->fluid->lots, opening->record,
                                NULL);
    }
}

static const HandDeed deeds[] = {
  { UNSOOT_HAND_SHORT, UNSOOT_DEED_ORDER, read_fluid, open_order },
  { UNSOOT_HAND_REORDER, UNSOOT_DEED_ORDER, read_fluid, open_order },
  { UNSOOT_HAND_GAUGE, UNSOOT_DEED_CHECK_MACHINE, read_machine, open_gauge },
  { UNSOOT_HAND_HOSES, UNSOOT_DEED_CHECK_MACHINE, read_machine, open_hoses },
  { UNSOOT_HAND_UNINVOICED, UNSOOT_DEED_INVOICE, read_job, open_invoice },
  { UNSOOT_HAND_EXPIRY, UNSOOT_DEED_RECORD_WASTE, read_lot, open_waste },
};

static void
opening_free (Opening *opening)
{
  g_object_unref (opening->over);
  g_object_unref (opening->session);
  g_free (opening);
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Opening *opening = data;
  g_autoptr (Found) found = g_new0 (Found, 1);

  found->today = unsoot_first_record_today (db, opening->now, error);
  if (found->today == NULL || !opening->deed->read (db, opening, found, error))
    return NULL;
  return g_steal_pointer (&found);
}

/* What can't be read is told by the page in front, which reads the same. */
static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Opening *opening = user_data;
  g_autoptr (Found) found = unsoot_store_call_finish (UNSOOT_STORE (source), result, NULL);

  if (found != NULL && gtk_widget_get_root (opening->over) != NULL)
    opening->deed->open (opening, found);
  opening_free (opening);
}

static const HandDeed *
find_deed (UnsootHandKind kind)
{
  for (gsize i = 0; i < G_N_ELEMENTS (deeds); i++)
    if (deeds[i].kind == kind)
      return &deeds[i];
  return NULL;
}

void
unsoot_hand_deed_open (GtkWidget *over, UnsootSession *session, UnsootHandKind kind,
                       gint64 target_id)
{
  const HandDeed *deed = find_deed (kind);
  GtkWidget *toasts
      = ADW_IS_TOAST_OVERLAY (over) ? over : gtk_widget_get_ancestor (over, ADW_TYPE_TOAST_OVERLAY);
  g_autofree char *refusal = deed != NULL ? unsoot_session_refusal (session, deed->deed) : NULL;
  Opening *opening;

  if (deed == NULL || refusal != NULL || toasts == NULL)
    return;
  opening = g_new0 (Opening, 1);
  opening->deed = deed;
  /* Pages are made anew while it is read; what holds them stays. */
  opening->over = g_object_ref (adw_toast_overlay_get_child (ADW_TOAST_OVERLAY (toasts)));
  opening->session = g_object_ref (session);
  opening->record = target_id;
  opening->now = unsoot_session_now (session);
  unsoot_store_call_async (unsoot_session_get_store (session), load, opening, NULL, found_free,
                           NULL, loaded_cb, opening);
}
