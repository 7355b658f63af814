/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "reading-row.h"
#include "session.h"

G_BEGIN_DECLS

/* Buttons of one picture: it shows something else; it is printed; it is taken out. */
GtkWidget *unsoot_photo_tell_button_new (UnsootSession *session, const UnsootPhotoRow *photo);
GtkWidget *unsoot_photo_choose_button_new (UnsootSession *session, const UnsootPhotoRow *photo);
GtkWidget *unsoot_photo_remove_button_new (UnsootSession *session, const UnsootPhotoRow *photo);

G_END_DECLS
