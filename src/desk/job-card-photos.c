/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "path.h"
#include "photo-deeds.h"
#include "photo-intake.h"
#include "photo-pair-view.h"

/* A file that stays as long as what needs it. */
typedef struct
{
  UnsootJobViewFile *file;
  UnsootSession *session;
} Wanted;

static Wanted *
wanted_new (UnsootJobViewFile *file, UnsootSession *session)
{
  Wanted *wanted = g_new (Wanted, 1);

  *wanted = (Wanted){ unsoot_job_view_file_ref (file), g_object_ref (session) };
  return wanted;
}

static void
wanted_free (gpointer data, GClosure *closure)
{
  Wanted *wanted = data;

  unsoot_job_view_file_unref (wanted->file);
  g_object_unref (wanted->session);
  g_free (wanted);
}

static gboolean
is_open (const UnsootJobViewFile *file)
{
  UnsootJobStatus status = UNSOOT_JOB_PAID;

  unsoot_job_status_find (file->file->job->status, &status);
  return status != UNSOOT_JOB_INVOICED && status != UNSOOT_JOB_PAID;
}

static void
choose_cb (GtkWidget *button, const Wanted *wanted)
{
  unsoot_photos_choose_files (button, wanted->session, wanted->file);
}

static void
paste_cb (GtkWidget *button, const Wanted *wanted)
{
  unsoot_photos_paste (button, wanted->session, wanted->file);
}

static GtkWidget *
deed_new (UnsootJobViewFile *file, UnsootSession *session, const char *label, GCallback clicked)
{
  GtkWidget *button = unsoot_deed_button_new (session, UNSOOT_DEED_RECORD_READING, label, NULL);

  g_signal_connect_data (button, "clicked", clicked, wanted_new (file, session), wanted_free, 0);
  return button;
}

static void
add_deeds (UnsootCard *card, UnsootJobViewFile *file, UnsootSession *session)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_append (GTK_BOX (row),
                  deed_new (file, session, _ ("Add pictures…"), G_CALLBACK (choose_cb)));
  gtk_box_append (GTK_BOX (row), deed_new (file, session, _ ("Paste"), G_CALLBACK (paste_cb)));
  gtk_box_append (GTK_BOX (card), row);
}

static gboolean
may_add (UnsootSession *session)
{
  UnsootRole role;

  return !unsoot_session_get_role (session, &role)
         || unsoot_role_may (role, UNSOOT_DEED_RECORD_READING);
}

static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, const Wanted *wanted)
{
  g_autoptr (GListModel) files = unsoot_photos_of_list (value);
  GtkWidget *card = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (target));

  if (!may_add (wanted->session))
    return FALSE;
  unsoot_photos_add_files (card, wanted->session, wanted->file, files);
  return TRUE;
}

/* The card takes what is dragged onto it, as long as the job is open. */
static void
take_drops (UnsootCard *card, UnsootJobViewFile *file, UnsootSession *session)
{
  static const char DROPS[] = "photo-drops";
  GtkEventController *former = g_object_get_data (G_OBJECT (card), DROPS);
  GtkDropTarget *target;

  if (former != NULL)
    gtk_widget_remove_controller (GTK_WIDGET (card), former);
  g_object_set_data (G_OBJECT (card), DROPS, NULL);
  if (!is_open (file))
    return;
  target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect_data (target, "drop", G_CALLBACK (drop_cb), wanted_new (file, session),
                         wanted_free, 0);
  gtk_widget_add_controller (GTK_WIDGET (card), GTK_EVENT_CONTROLLER (target));
  g_object_set_data (G_OBJECT (card), DROPS, target);
}

static void
add_photo_deeds (GtkWidget *box, UnsootSession *session, const UnsootPhotoRow *photo,
                 const char *words)
{
  GtkWidget *row, *label;

  if (photo == NULL)
    return;
  row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  label = gtk_label_new (words);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (row), label);
  if (!photo->chosen)
    gtk_box_append (GTK_BOX (row), unsoot_photo_choose_button_new (session, photo));
  gtk_box_append (GTK_BOX (row), unsoot_photo_tell_button_new (session, photo));
  gtk_box_append (GTK_BOX (row), unsoot_photo_remove_button_new (session, photo));
  gtk_box_append (GTK_BOX (box), row);
}

/* Another one that shows the same: small, and said to be in no report. */
static void
add_passed_over (GtkWidget *box, UnsootSession *session, const UnsootPhotoRow *photo)
{
  const gboolean before = g_str_equal (photo->stage, "before");
  const UnsootPhotoPair alone = { photo->angle, before ? photo : NULL, before ? NULL : photo };
  GtkWidget *view = unsoot_photo_pair_view_new (&alone);

  gtk_widget_set_halign (view, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), view);
  add_photo_deeds (box, session, photo,
                   before ? _ ("Before, not printed") : _ ("After, not printed"));
}

static void
add_pair (UnsootCard *card, const UnsootJobViewFile *file, UnsootSession *session,
          const UnsootPhotoPair *pair)
{
  g_autoptr (GPtrArray) over = unsoot_photos_passed_over (file->file->photos, pair->angle);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *title = gtk_label_new (pair->angle);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "heading");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), unsoot_photo_pair_view_new (pair));
  if (is_open (file))
    {
      add_photo_deeds (box, session, pair->before, _ ("Before"));
      add_photo_deeds (box, session, pair->after, _ ("After"));
      for (guint i = 0; i < over->len; i++)
        add_passed_over (box, session, over->pdata[i]);
    }
  gtk_box_append (GTK_BOX (card), box);
}

void
unsoot_job_card_photos (UnsootCard *card, UnsootJobViewFile *file, UnsootSession *session)
{
  g_autoptr (GArray) pairs = unsoot_photo_pairs (file->file->photos);

  for (guint i = 0; i < pairs->len; i++)
    add_pair (card, file, session, &g_array_index (pairs, UnsootPhotoPair, i));
  if (pairs->len == 0)
    unsoot_card_say (card, is_open (file)
                               ? _ ("None yet. Taken from the same side before and after they "
                                    "show the work. Drop them here, paste or add them.")
                               : _ ("None were taken."));
  take_drops (card, file, session);
  if (is_open (file))
    add_deeds (card, file, session);
}
