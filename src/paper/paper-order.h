/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "order-file.h"
#include "paper-size.h"

G_BEGIN_DECLS

/* The purchase order as PDF; as unsoot_paper_make (). */
GBytes *unsoot_paper_order (const UnsootOrderFile *file, UnsootPaperSize size, char **remark,
                            GError **error);

/* "order-3-2026-11-28.pdf". Free it. */
char *unsoot_paper_order_file_name (const UnsootOrderFile *file);

G_END_DECLS
