/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "adapter-board.h"
#include "session.h"

/* Dialogs for what is done with an adapter: lent, taken back, looked over, retired. Each fills
 * itself from @tag. */
void unsoot_adapter_lend_open (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag);
void unsoot_adapter_back_open (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag);
void unsoot_adapter_inspect_open (GtkWidget *over, UnsootSession *session,
                                  const UnsootBoardTag *tag);
void unsoot_adapter_retire_open (GtkWidget *over, UnsootSession *session,
                                 const UnsootBoardTag *tag);

/* A retired one comes back, to be looked over first. */
void unsoot_adapter_revive (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag);
