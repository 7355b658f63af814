/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "photo-deeds.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "deed-dialog.h"
#include "photo-fields.h"
#include "photos.h"

const char *const unsoot_photo_stages[] = { "before", "after" };
const char *const unsoot_photo_stage_words[]
    = { N_ ("Before the work"), N_ ("After the work"), NULL };

static gboolean
tell (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_photo_tell (db, who, order->record, order->version,
                            unsoot_photo_stages[order->values[UNSOOT_PHOTO_STAGE].number],
                            unsoot_deed_text (order, UNSOOT_PHOTO_ANGLE), error);
}

static gboolean
choose (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_photo_choose (db, who, order->record, error);
}

static gboolean
take_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_photo_remove (db, who, order->record, error);
}

static const UnsootDeedForm tell_form = {
  .slug = "photo-tell",
  .title = N_ ("What the picture shows"),
  .verb = N_ ("Save"),
  .done = N_ ("The picture is named"),
  .deed = UNSOOT_DEED_RECORD_READING,
  .n_fields = UNSOOT_PHOTO_FIELDS,
  .fields = { UNSOOT_PHOTO_ANGLE_FIELD, UNSOOT_PHOTO_STAGE_FIELD },
  .carry_out = tell,
};

static const UnsootDeedForm choose_form = {
  .slug = "photo-choose",
  .title = N_ ("A picture"),
  .verb = N_ ("Print this one"),
  .done = N_ ("This picture is shown and printed"),
  .deed = UNSOOT_DEED_RECORD_READING,
  .carry_out = choose,
};

static const UnsootDeedForm remove_form = {
  .slug = "photo-remove",
  .title = N_ ("Take the picture out"),
  .verb = N_ ("Take it out"),
  .done = N_ ("The picture is out of the book"),
  .deed = UNSOOT_DEED_RECORD_READING,
  .destroys = TRUE,
  .carry_out = take_out,
};

/* A button of one picture. */
typedef struct
{
  UnsootSession *session;
  gint64 photo;
  gint64 version;
  char *angle;
  gboolean after;
} Wanted;

static void
wanted_free (gpointer data, GClosure *closure)
{
  Wanted *wanted = data;

  g_object_unref (wanted->session);
  g_free (wanted->angle);
  g_free (wanted);
}

static GtkWidget *
button_new (UnsootSession *session, const UnsootPhotoRow *photo, const char *label,
            GCallback clicked)
{
  /* Translators: which picture: what it shows, when it was taken */
  g_autofree char *about = g_strdup_printf (
      _ ("%s, %s"), photo->angle,
      g_str_equal (photo->stage, "before") ? _ ("before the work") : _ ("after the work"));
  GtkWidget *button = unsoot_deed_button_new (session, UNSOOT_DEED_RECORD_READING, label, about);
  Wanted *wanted = g_new (Wanted, 1);

  *wanted = (Wanted){ g_object_ref (session), photo->id, photo->version, g_strdup (photo->angle),
                      g_str_equal (photo->stage, "after") };
  gtk_widget_add_css_class (button, "flat");
  g_signal_connect_data (button, "clicked", clicked, wanted, wanted_free, 0);
  return button;
}

static void
tell_cb (GtkWidget *button, const Wanted *wanted)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (button, wanted->session, &tell_form, wanted->photo);

  unsoot_deed_dialog_set_version (dialog, wanted->version);
  unsoot_deed_dialog_set_text (dialog, UNSOOT_PHOTO_ANGLE, wanted->angle);
  unsoot_deed_dialog_set_choice (dialog, UNSOOT_PHOTO_STAGE, wanted->after ? 1 : 0);
  unsoot_deed_dialog_open (dialog);
}

static void
choose_cb (GtkWidget *button, const Wanted *wanted)
{
  unsoot_deed_do (button, wanted->session, &choose_form, wanted->photo);
}

static void
remove_cb (GtkWidget *button, const Wanted *wanted)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (button, wanted->session, &remove_form, wanted->photo);

  unsoot_deed_dialog_say (dialog, wanted->angle);
  unsoot_deed_dialog_open (dialog);
}

GtkWidget *
unsoot_photo_tell_button_new (UnsootSession *session, const UnsootPhotoRow *photo)
{
  return button_new (session, photo, _ ("Name…"), G_CALLBACK (tell_cb));
}

GtkWidget *
unsoot_photo_choose_button_new (UnsootSession *session, const UnsootPhotoRow *photo)
{
  return button_new (session, photo, _ ("Print this one"), G_CALLBACK (choose_cb));
}

GtkWidget *
unsoot_photo_remove_button_new (UnsootSession *session, const UnsootPhotoRow *photo)
{
  return button_new (session, photo, _ ("Take out…"), G_CALLBACK (remove_cb));
}
