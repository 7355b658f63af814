/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "adapter-row.h"
#include "booking-row.h"
#include "customer-row.h"
#include "family-row.h"
#include "fluid-row.h"
#include "invoice-row.h"
#include "job-row.h"
#include "lot-row.h"
#include "machine-row.h"
#include "procedure-row.h"
#include "reading-row.h"
#include "run-row.h"
#include "service-row.h"
#include "shop-row.h"
#include "staff-row.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* An adapter that a job needs, with its kind. */
typedef struct
{
  UnsootAdapterItemRow *item; /* NULL: none chosen yet */
  UnsootAdapterTypeRow *type;
} UnsootJobAdapter;

/* An invoice or credit note with what was frozen under it and paid on it. */
typedef struct
{
  UnsootInvoiceRow *invoice;
  GPtrArray *lines;    /* UnsootInvoiceLineRow */
  GPtrArray *taxes;    /* UnsootInvoiceTaxRow */
  GPtrArray *payments; /* UnsootPaymentRow */
} UnsootInvoiceFile;

/* Everything that belongs to one job, read in one go: what the job's page and every
 * paper about it are made from. Members that may be missing are NULL; arrays never are.
 * All of it is owned by the file. */
typedef struct
{
  UnsootShopRow *shop;
  UnsootJobRow *job;
  UnsootCustomerRow *customer;
  GPtrArray *phones;    /* UnsootPhoneRow */
  GPtrArray *addresses; /* UnsootAddressRow */
  UnsootVehicleRow *vehicle;
  GPtrArray *meters; /* UnsootMeterReadingRow of the vehicle, oldest first */
  UnsootFamilyRow *family;
  GPtrArray *kit; /* UnsootKitItemRow */
  UnsootServiceRow *service;
  GPtrArray *lines;          /* UnsootJobLineRow */
  GPtrArray *status;         /* UnsootJobStatusRow, oldest first */
  GPtrArray *estimates;      /* UnsootEstimateRow, newest last */
  GPtrArray *authorisations; /* UnsootAuthorisationRow */
  UnsootBookingRow *booking; /* the one that stands */
  UnsootBayRow *bay;
  UnsootMachineRow *machine;
  UnsootStaffRow *technician;
  GPtrArray *adapters; /* UnsootJobAdapter */
  UnsootProcedureRow *procedure;
  GPtrArray *phases;          /* UnsootPhaseRow */
  GPtrArray *steps;           /* UnsootStepRow */
  UnsootRunRow *run;          /* the latest */
  GPtrArray *run_events;      /* UnsootRunEventRow */
  UnsootFluidRow *fuel_fluid; /* the fluids of the lots used, or else those meant */
  UnsootFluidRow *intake_fluid;
  UnsootLotRow *fuel_lot;
  UnsootLotRow *intake_lot;
  GPtrArray *stock_moves; /* UnsootStockMoveRow of this job */
  GPtrArray *readings;    /* UnsootReadingRow */
  GPtrArray *photos;      /* UnsootPhotoRow */
  GPtrArray *invoices;    /* UnsootInvoiceFile, oldest first */
  GPtrArray *tax_rules;   /* UnsootTaxRuleRow */
  int utc_offset_minutes; /* the shop's clock at the time the file was read */
} UnsootJobFile;

/* A file with empty arrays and nothing else; frees with all it owns. */
UnsootJobFile *unsoot_job_file_new (void);
void unsoot_job_file_free (UnsootJobFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootJobFile, unsoot_job_file_free)

void unsoot_job_adapter_free (UnsootJobAdapter *adapter);
void unsoot_invoice_file_free (UnsootInvoiceFile *file);

G_END_DECLS
