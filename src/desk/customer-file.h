/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "customers.h"
#include "invoices.h"
#include "lists.h"

G_BEGIN_DECLS

/* What the page of one customer shows, read in one go. */
typedef struct
{
  UnsootCustomerRow *customer;
  GPtrArray *phones;    /* UnsootPhoneRow */
  GPtrArray *addresses; /* UnsootAddressRow */
  GPtrArray *vehicles;  /* UnsootVehicleLine */
  GPtrArray *jobs;      /* UnsootJobLine, newest first */
  GPtrArray *calls;     /* UnsootCallLine, the newest first */
  GPtrArray *invoices;  /* UnsootInvoiceLine that are open */
  UnsootOwes owes;
} UnsootCustomerFile;

/* The most that is listed of each; the lists themselves have them all. */
#define UNSOOT_CUSTOMER_FILE_LIMIT 50

void unsoot_customer_file_free (UnsootCustomerFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootCustomerFile, unsoot_customer_file_free)

/* @today: ISO date, by which it is told what is overdue. */
UnsootCustomerFile *unsoot_customer_file_load (UnsootDb *db, gint64 id, const char *today,
                                               GError **error);

G_END_DECLS
