/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "call-deeds.h"

#include <glib/gi18n-lib.h>

#include "calls.h"
#include "deed-dialog.h"
#include "format.h"

enum
{
  SPOKE_WITH,
  SAID,
  AGAIN_ON,
};

static gboolean
note (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, const char *about,
      GError **error)
{
  order->undo_id = unsoot_phone_call_note (
      db, who, about, order->record, unsoot_deed_text (order, SPOKE_WITH),
      unsoot_deed_text (order, SAID), unsoot_deed_text (order, AGAIN_ON), error);
  return order->undo_id != 0;
}

static gboolean
note_job (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return note (db, who, order, "job", error);
}

static gboolean
note_loan (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return note (db, who, order, "loan", error);
}

static gboolean
note_invoice (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return note (db, who, order, "invoice", error);
}

static gboolean
note_vehicle (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return note (db, who, order, "vehicle", error);
}

static gboolean
take_back (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_phone_call_take_back (db, who, order->undo_id, error);
}

#define CALL_FORM(name, function)                                                                  \
  {                                                                                                \
    .slug = name, .title = N_ ("A call"), .verb = N_ ("Note the call"),                            \
    .done = N_ ("The call is noted"), .deed = UNSOOT_DEED_EDIT_CUSTOMER, .n_fields = 3,            \
    .fields = { { N_ ("Spoke with"), UNSOOT_ASK_TEXT, TRUE, N_ ("Empty: nobody answered"), NULL }, \
                { N_ ("What was said"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL },                      \
                { N_ ("Call again on"), UNSOOT_ASK_DAY, TRUE,                                      \
                  N_ ("Until then it needs no hand; left out, until tomorrow"), NULL } },          \
    .carry_out = function, .undo = take_back,                                                      \
  }

static const struct
{
  const char *about;
  UnsootDeedForm form;
} forms[] = { { "job", CALL_FORM ("call-job", note_job) },
              { "loan", CALL_FORM ("call-loan", note_loan) },
              { "invoice", CALL_FORM ("call-invoice", note_invoice) },
              { "vehicle", CALL_FORM ("call-vehicle", note_vehicle) } };

/* A dialog on its way: whom to call is read first. */
typedef struct
{
  GtkWidget *over;
  UnsootSession *session;
  const UnsootDeedForm *form;
  const char *about;
  gint64 record;
  char *thing;
} Opening;

static void
opening_free (Opening *opening)
{
  g_object_unref (opening->over);
  g_object_unref (opening->session);
  g_free (opening->thing);
  g_free (opening);
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Opening *opening = data;

  return unsoot_phone_call_file_load (db, opening->about, opening->record, error);
}

static char *
line_words (const UnsootCallLine *line, UnsootSession *session)
{
  g_autofree char *when = unsoot_format_moment (line->row->at, unsoot_session_now (session),
                                                unsoot_session_zone (session));

  if (line->row->spoke_with == NULL)
    /* Translators: when, by whom of the shop, what was noted */
    return g_strdup_printf (_ ("%s, %s: nobody answered. %s"), when,
                            line->by != NULL ? line->by : "–", line->row->said);
  /* Translators: when, by whom of the shop, with whom, what was said */
  return g_strdup_printf (_ ("%s, %s with %s: %s"), when, line->by != NULL ? line->by : "–",
                          line->row->spoke_with, line->row->said);
}

static char *
about_words (const Opening *opening, const UnsootCallFile *file)
{
  GString *words = g_string_new (opening->thing);

  g_string_append_printf (words, "\n%s", file->name);
  if (file->phones != NULL)
    g_string_append_printf (words, "\n%s", file->phones);
  else
    g_string_append_printf (words, "\n%s", _ ("No phone number is known."));
  if (file->before->len > 0)
    {
      g_autofree char *last = line_words (file->before->pdata[0], opening->session);
      g_string_append_printf (words, "\n%s", last);
    }
  return g_string_free (words, FALSE);
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Opening *opening = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootCallFile) file
      = unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  UnsootDeedDialog *dialog;
  g_autofree char *about = NULL;

  /* The page may be gone, or made anew, by the time it is read. */
  if (gtk_widget_get_root (opening->over) != NULL)
    {
      dialog = unsoot_deed_dialog_new (opening->over, opening->session, opening->form,
                                       opening->record);
      about = file != NULL ? about_words (opening, file) : g_strdup (error->message);
      unsoot_deed_dialog_say (dialog, about);
      if (file != NULL)
        unsoot_deed_dialog_set_text (dialog, SPOKE_WITH,
                                     file->ask_for != NULL ? file->ask_for : file->name);
      unsoot_deed_dialog_open (dialog);
    }
  opening_free (opening);
}

void
unsoot_phone_call_open (GtkWidget *over, UnsootSession *session, const char *about, gint64 record,
                        const char *thing)
{
  GtkWidget *toasts = gtk_widget_get_ancestor (over, ADW_TYPE_TOAST_OVERLAY);

  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++)
    if (g_str_equal (forms[i].about, about))
      {
        Opening *opening = g_new0 (Opening, 1);

        /* Pages are made anew while it is read; what holds them stays. */
        opening->over = g_object_ref (adw_toast_overlay_get_child (ADW_TOAST_OVERLAY (toasts)));
        opening->session = g_object_ref (session);
        opening->form = &forms[i].form;
        opening->about = forms[i].about;
        opening->record = record;
        opening->thing = g_strdup (thing);
        unsoot_store_call_async (unsoot_session_get_store (session), load, opening, NULL,
                                 (GDestroyNotify) unsoot_phone_call_file_free, NULL, loaded_cb,
                                 opening);
      }
}

void
unsoot_phone_call_card (UnsootCard *card, const GPtrArray *calls, UnsootSession *session)
{
  unsoot_card_clear (card);
  gtk_widget_set_visible (GTK_WIDGET (card), calls->len > 0);
  for (guint i = 0; i < calls->len; i++)
    {
      g_autofree char *words = line_words (calls->pdata[i], session);
      GtkWidget *label = gtk_label_new (words);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_selectable (GTK_LABEL (label), TRUE);
      gtk_box_append (GTK_BOX (card), label);
    }
}
