/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* What is sold. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  char *sides;        /* fuel, intake or both */
  gint64 price_minor; /* labour */
  gint64 planned_minutes;
  gint64 disposal_minor;
  gboolean active;
} UnsootServiceRow;
UNSOOT_DECLARE_RECORD (UnsootServiceRow, unsoot_service_row)

/* How much fluid where the family says nothing. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *side;
  char *size_class;
  gint64 dose_ml;
  char *source;
} UnsootDoseRuleRow;
UNSOOT_DECLARE_RECORD (UnsootDoseRuleRow, unsoot_dose_rule_row)

/* Tax by kind of line. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *line_kind;           /* labour, fluid, kit, disposal or other */
  char *category;            /* EN 16931: S, Z, E or O */
  gint64 rate_milli_percent; /* 7250 is 7.25 % */
  char *label;
} UnsootTaxRuleRow;
UNSOOT_DECLARE_RECORD (UnsootTaxRuleRow, unsoot_tax_rule_row)

G_END_DECLS
