/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "job-file.h"
#include "page-kit.h"

G_BEGIN_DECLS

/* A line as printed, whatever record it comes from. Strings are borrowed. */
typedef struct
{
  const char *text;
  gint64 quantity_milli;
  const char *unit;
  gint64 unit_price_minor;
  gint64 net_minor;
} UnsootPaperLine;

/* The table of lines: text, quantity, price and net, right-aligned. */
void unsoot_paper_lines (UnsootPageKit *kit, const UnsootPaperLine *lines, guint n_lines,
                         const char *currency);

/* One amount of the totals; the last one drawn large. */
typedef struct
{
  char *label; /* owned */
  gint64 amount_minor;
  gboolean strong;
} UnsootPaperTotal;

/* An array of UnsootPaperTotal that frees its labels. */
GArray *unsoot_paper_totals_new (void);
/* Takes @label. */
void unsoot_paper_totals_add (GArray *totals, char *label, gint64 amount_minor, gboolean strong);
/* Draws them at the right, kept together. */
void unsoot_paper_totals_draw (UnsootPageKit *kit, const GArray *totals, const char *currency);

/* "Sales tax 7.25 %", "Exempt: resale": how a row of tax is called. @label and @reason may be
 * NULL. */
char *unsoot_paper_tax_label (const char *category, gint64 rate_milli_percent, const char *label);

G_END_DECLS
