/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-row.h"
#include "shop-row.h"
#include "supply-order-row.h"

G_BEGIN_DECLS

/* What a purchase order is printed from. */
typedef struct
{
  UnsootShopRow *shop;
  UnsootSupplierRow *supplier;
  UnsootFluidRow *fluid;
  UnsootSupplyOrderRow *order;
  char *date;        /* ISO, the shop's, on which it was ordered */
  char *expected_on; /* ISO date, as told last; NULL: never */
  char *cancelled;   /* why; NULL: it stands */
  char *ordered_by;  /* a name; NULL: not known */
} UnsootOrderFile;

void unsoot_order_file_free (UnsootOrderFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootOrderFile, unsoot_order_file_free)

G_END_DECLS
