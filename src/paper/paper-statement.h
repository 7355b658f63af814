/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "paper-size.h"
#include "statement-file.h"

G_BEGIN_DECLS

/* The statement of account as PDF; as unsoot_paper_make (). */
GBytes *unsoot_paper_statement (const UnsootStatementFile *file, UnsootPaperSize size,
                                char **remark, GError **error);

/* "statement-osier-garage-2026-11-28.pdf": letters, digits, hyphens. Free it. */
char *unsoot_paper_statement_file_name (const UnsootStatementFile *file);

G_END_DECLS
