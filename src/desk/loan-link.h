/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "adapter-board.h"
#include "session.h"

/* A row of a link list for a loan that is out: the adapter, who has it, since when and until
 * when, and a button that takes it back. It opens the adapter. @tag is copied as needed. */
GtkWidget *unsoot_loan_link_new (const UnsootBoardTag *tag, UnsootSession *session);

/* "colleague" as people say it: "a colleague". */
const char *unsoot_loan_kind_words (const char *kind);
