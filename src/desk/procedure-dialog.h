/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "family-row.h"
#include "session.h"

G_BEGIN_DECLS

/* An engine family's procedure as text (procedure-text.h), judged while it is written: it can be
 * put into use once it breaks no rule. Where there is none yet it begins with the usual one. */
#define UNSOOT_TYPE_PROCEDURE_DIALOG (unsoot_procedure_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootProcedureDialog, unsoot_procedure_dialog, UNSOOT, PROCEDURE_DIALOG,
                      AdwWindow)

/* @over: any widget of the window. Shows it. */
GtkWindow *unsoot_procedure_dialog_open (GtkWidget *over, UnsootSession *session,
                                         const UnsootFamilyRow *family);

G_END_DECLS
