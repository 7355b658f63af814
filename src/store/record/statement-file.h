/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ageing.h"
#include "customer-row.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* An invoice that is open, or on which too much was paid. */
typedef struct
{
  gint64 number;
  char *issued_on; /* ISO dates */
  char *due_on;
  char *vehicle;
  char *po_number; /* NULL: none */
  gint64 total_minor;
  gint64 paid_minor;     /* less what was taken back */
  gint64 credited_minor; /* above zero */
  gint64 open_minor;
} UnsootStatementLine;

/* A statement of account: what one customer owes on one day. */
typedef struct
{
  UnsootShopRow *shop;
  UnsootCustomerRow *customer;
  char *bill_to;
  char *date;       /* ISO, the shop's */
  gint64 at;        /* Unix seconds */
  GPtrArray *lines; /* UnsootStatementLine by number */
  UnsootAgeing owed;
} UnsootStatementFile;

void unsoot_statement_line_free (UnsootStatementLine *line);
void unsoot_statement_file_free (UnsootStatementFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootStatementFile, unsoot_statement_file_free)

G_END_DECLS
