/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* Which way a list is sorted. Each kind of list has its own natural key. */
typedef enum
{
  UNSOOT_LIST_UP,
  UNSOOT_LIST_DOWN,
} UnsootListOrder;

/* Where a page begins: after the row that closed the one before. Zeros: at the start. */
typedef struct
{
  const char *after_text; /* sort key of that row; NULL for lists sorted by number */
  gint64 after_id;
  guint limit;
  UnsootListOrder order;
} UnsootListPage;

typedef struct
{
  gint64 id;
  char *name;
  char *kind;
  char *phone; /* the first */
  char *town;  /* of the first address */
  gint64 vehicles;
  gint64 owes_minor;
} UnsootCustomerLine;

typedef struct
{
  gint64 id;
  gint64 customer_id;
  char *title; /* as a vehicle is called */
  char *sort;  /* make, model, unit: what the list is sorted by */
  char *customer;
  char *plate;
  char *unit_number;
  char *vin;
  char *next_due_on;
  char *last_done_on; /* ISO date of the last service; NULL: none */
} UnsootVehicleLine;

typedef struct
{
  gint64 id;
  gint64 number;
  gint64 vehicle_id;
  gint64 customer_id;
  char *status;
  char *vehicle;
  char *customer;
  char *service;
  char *sides;
  gint64 made_at;
  gint64 starts_at;   /* of its booking; 0: none */
  gint64 total_minor; /* of its newest estimate; 0: none */
} UnsootJobLine;

typedef struct
{
  gint64 id;
  gint64 number;
  gint64 job_id;
  gint64 job_number; /* 0: of no job */
  gint64 customer_id;
  char *kind;
  char *customer;
  char *issued_on;
  char *due_on;
  char *currency;
  gint64 total_minor;
  gint64 open_minor;
} UnsootInvoiceLine;

typedef enum
{
  UNSOOT_INVOICES_ALL, /* credit notes too */
  UNSOOT_INVOICES_OPEN,
  UNSOOT_INVOICES_OVERDUE, /* open, and due before today */
} UnsootInvoicesWanted;

void unsoot_customer_line_free (UnsootCustomerLine *line);
void unsoot_vehicle_line_free (UnsootVehicleLine *line);
void unsoot_job_line_free (UnsootJobLine *line);
void unsoot_invoice_line_free (UnsootInvoiceLine *line);

/* One page, in an array that owns its listings; fewer than the limit is the last. Customers
 * by name, vehicles by make, model and unit, jobs and invoices by number. */
GPtrArray *unsoot_customer_page (UnsootDb *db, const UnsootListPage *page, GError **error);
GPtrArray *unsoot_vehicle_page (UnsootDb *db, const UnsootListPage *page, gint64 customer_id,
                                GError **error);
/* @status: (nullable): only jobs in it; @customer_id, @vehicle_id: 0 is all. */
GPtrArray *unsoot_job_page (UnsootDb *db, const UnsootListPage *page, const char *status,
                            gint64 customer_id, gint64 vehicle_id, GError **error);
/* @today: (nullable): ISO date that says what is overdue; not asked for otherwise. */
GPtrArray *unsoot_invoice_page (UnsootDb *db, const UnsootListPage *page,
                                UnsootInvoicesWanted wanted, const char *today, gint64 customer_id,
                                GError **error);

G_END_DECLS
