/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "adapter-row.h"
#include "rows.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* Where an item is at a time. */
typedef enum
{
  UNSOOT_ITEM_HERE,
  UNSOOT_ITEM_BOOKED, /* held by a booking for that time */
  UNSOOT_ITEM_LENT,
  UNSOOT_ITEM_INSPECTION, /* set aside, or its inspection is due */
  UNSOOT_ITEM_RETIRED,
} UnsootItemPlace;

typedef struct
{
  UnsootAdapterItemRow *item;
  UnsootItemPlace place;
  char *words; /* where it is: "bin C3", "lent to Osier Garage until 14 Nov" */
} UnsootItemState;

/* A kind of adapter that fits a vehicle. */
typedef struct
{
  UnsootAdapterTypeRow *type;
  char *reason;     /* which rule of the shop says so */
  GPtrArray *items; /* UnsootItemState, those that are free first */
} UnsootAdapterFit;

void unsoot_item_state_free (UnsootItemState *state);
void unsoot_adapter_fit_free (UnsootAdapterFit *fit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootItemState, unsoot_item_state_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootAdapterFit, unsoot_adapter_fit_free)

/**
 * unsoot_adapters_fitting:
 * @sides: fuel, intake or both
 * @starts_at, @ends_at: for which time; bookings of @but_job_id don't count
 *
 * UnsootAdapterFit for every kind that fits, by side and code.
 */
GPtrArray *unsoot_adapters_fitting (UnsootDb *db, const UnsootVehicleRow *vehicle,
                                    const char *sides, gint64 starts_at, gint64 ends_at,
                                    gint64 but_job_id, GError **error);

/* Where one item is at a time. */
UnsootItemState *unsoot_adapter_item_state (UnsootDb *db, gint64 item_id, gint64 starts_at,
                                            gint64 ends_at, gint64 but_job_id, GError **error);

/* UnsootAdapterTypeRow by code; UnsootAdapterItemRow by label; UnsootAdapterFitRow of a kind. */
GPtrArray *unsoot_adapter_type_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_adapter_item_list (UnsootDb *db, gint64 type_id, GError **error);
GPtrArray *unsoot_adapter_fit_list (UnsootDb *db, gint64 type_id, GError **error);

/* Each adds where the id is 0, else saves. Errors: CONFLICT, NOT_ALLOWED; CONSTRAINT for a
 * code or label that is taken. */
gboolean unsoot_adapter_type_save (UnsootDb *db, const UnsootActing *who,
                                   UnsootAdapterTypeRow *type, GError **error);
gboolean unsoot_adapter_item_save (UnsootDb *db, const UnsootActing *who,
                                   UnsootAdapterItemRow *item, GError **error);
gboolean unsoot_adapter_fit_save (UnsootDb *db, const UnsootActing *who, UnsootAdapterFitRow *fit,
                                  GError **error);

/* It does not fit that after all. Errors: NOT_ALLOWED, NOT_FOUND. */
gboolean unsoot_adapter_fit_drop (UnsootDb *db, const UnsootActing *who, gint64 fit_id,
                                  GError **error);

/**
 * unsoot_adapter_lend:
 * @loan: to whom, for how long: item_id, to_kind, to_name, phone, due_on, job_id
 *
 * Errors: NOT_ALLOWED; CONSTRAINT where the item is not here, with where it is.
 */
gboolean unsoot_adapter_lend (UnsootDb *db, const UnsootActing *who, UnsootLoanRow *loan,
                              GError **error);

/* Back from a loan, in @condition (nullable), into @bin (nullable: where it was). */
gboolean unsoot_adapter_back (UnsootDb *db, const UnsootActing *who, gint64 loan_id,
                              const char *condition, const char *bin, GError **error);

/* UnsootLoanRow that are out, the longest overdue first. */
GPtrArray *unsoot_loan_list (UnsootDb *db, GError **error);

G_END_DECLS
