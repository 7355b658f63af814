/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* All that the shop has settled for itself. */
typedef struct
{
  UnsootShopRow *shop;
  GPtrArray *hours;      /* UnsootOpenHoursRow by weekday */
  GPtrArray *holidays;   /* UnsootHolidayRow by day */
  GPtrArray *bays;       /* UnsootBayRow in order */
  GPtrArray *services;   /* UnsootServiceRow */
  GPtrArray *dose_rules; /* UnsootDoseRuleRow */
  GPtrArray *tax_rules;  /* UnsootTaxRuleRow */
  GPtrArray *staff;      /* UnsootStaffRow */
  GPtrArray *machines;   /* UnsootMachineRow */
  GPtrArray *tanks;      /* UnsootTankRow by machine */
  GPtrArray *fluids;     /* UnsootFluidRow */
  GPtrArray *suppliers;  /* UnsootSupplierRow by name */
  GPtrArray *families;   /* UnsootFamilyRow by name */
  GPtrArray *procedures; /* UnsootProcedureRow in use */
} UnsootPrefsFile;

UnsootPrefsFile *unsoot_prefs_file_load (UnsootDb *db, GError **error);
void unsoot_prefs_file_free (UnsootPrefsFile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootPrefsFile, unsoot_prefs_file_free)

G_END_DECLS
