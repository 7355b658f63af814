/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "adapter-row.h"
#include "family-row.h"
#include "record-button.h"

G_BEGIN_DECLS

/* Kinds of adapter, the adapters themselves, and what they fit: buttons and rows that open their
 * forms. */

/* @type NULL: a new kind. */
GtkWidget *unsoot_adapter_type_change_new (UnsootSession *session, const char *label,
                                           const UnsootAdapterTypeRow *type);

/* @item NULL: a new one; @types: UnsootAdapterTypeRow. */
GtkWidget *unsoot_adapter_item_change_new (UnsootSession *session, const char *label,
                                           const UnsootAdapterItemRow *item,
                                           const GPtrArray *types);

/* @words: what it fits, as the row says it; @families: UnsootFamilyRow. */
GtkWidget *unsoot_fit_row_widget_new (UnsootSession *session, const UnsootAdapterTypeRow *type,
                                      const UnsootAdapterFitRow *fit, const char *words,
                                      const GPtrArray *families);
GtkWidget *unsoot_fit_add_new (UnsootSession *session, const UnsootAdapterTypeRow *type,
                               const GPtrArray *families);

G_END_DECLS
