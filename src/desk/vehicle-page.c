/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-page.h"

#include <glib/gi18n-lib.h>

#include "call-deeds.h"
#include "card.h"
#include "columns.h"
#include "deed-button.h"
#include "facts.h"
#include "first-record.h"
#include "format.h"
#include "job-link.h"
#include "link-row.h"
#include "meter-words.h"
#include "table.h"
#include "title-block.h"
#include "vehicle-edit.h"
#include "vehicle-file.h"
#include "vehicle-life.h"
#include "vehicle-readings.h"
#include "vin.h"

enum
{
  METERS_SHOWN = 8
};

struct _UnsootVehiclePage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  UnsootCard *life;
  UnsootCard *readings;
  UnsootCard *identity;
  UnsootCard *due;
  UnsootCard *meters;
  UnsootCard *calls;
  UnsootCard *history;

  gint64 vehicle_id; /* that is shown */
};

G_DEFINE_FINAL_TYPE (UnsootVehiclePage, unsoot_vehicle_page, UNSOOT_TYPE_VIEW)

static gpointer
read_vehicle (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const gint64 id = unsoot_first_record (db, data, "vehicle", error);

  return id != 0 ? unsoot_vehicle_file_load (db, id, error) : NULL;
}

static void
add_mark (GString *text, const char *what, const char *value)
{
  if (value != NULL && *value != '\0')
    g_string_append_printf (text, "%s%s %s", text->len > 0 ? " · " : "", what, value);
}

static void
edit_cb (UnsootVehiclePage *self)
{
  unsoot_vehicle_edit_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                            self->vehicle_id, 0);
}

static void
book_cb (UnsootVehiclePage *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", "booking-vehicle",
                              self->vehicle_id);
}

static void
show_deeds (UnsootVehiclePage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *edit = unsoot_deed_button_new (session, UNSOOT_DEED_EDIT_VEHICLE, _ ("Edit…"), NULL);
  GtkWidget *book = unsoot_deed_button_new (session, UNSOOT_DEED_ESTIMATE, _ ("New booking"), NULL);

  unsoot_deed_button_draw (edit, "document-edit-symbolic", _ ("Edit…"));
  gtk_widget_remove_css_class (edit, "flat");
  unsoot_deed_button_suggest (book, TRUE);
  g_signal_connect_object (edit, "clicked", G_CALLBACK (edit_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (book, "clicked", G_CALLBACK (book_cb), self, G_CONNECT_SWAPPED);
  unsoot_title_block_add (self->head, edit);
  unsoot_title_block_add (self->head, book);
}

static void
show_head (UnsootVehiclePage *self, const UnsootVehicleFile *file)
{
  g_autofree char *title = unsoot_vehicle_model_title (file->vehicle);
  g_autofree char *whole = unsoot_vehicle_title (file->vehicle);
  g_autoptr (GString) marks = g_string_new (NULL);

  add_mark (marks, _ ("unit"), file->vehicle->unit_number);
  add_mark (marks, _ ("plate"), file->vehicle->plate);
  add_mark (marks, _ ("VIN"), file->vehicle->vin);
  unsoot_view_set_title (UNSOOT_VIEW (self), whole);
  unsoot_title_block_show (self->head, title, marks->str);
  unsoot_title_block_link (self->head, "unsoot-customer-symbolic", file->customer->name, "customer",
                           file->customer->id);
  self->vehicle_id = file->vehicle->id;
  show_deeds (self);
}

/* What the check of its VIN says, in a sentence. */
static void
add_vin (GtkWidget *facts, const char *vin)
{
  g_autoptr (UnsootVinCheck) check = vin != NULL ? unsoot_vin_check (vin) : NULL;
  GtkWidget *label;

  if (check == NULL)
    {
      unsoot_facts_add (UNSOOT_FACTS (facts), _ ("VIN"), _ ("not known"));
      return;
    }
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("VIN"), check->vin);
  label = unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Its check"),
                            check->sentence != NULL
                                ? check->sentence
                                : _ ("The check digit fits the other sixteen characters."));
  if (check->verdict != UNSOOT_VIN_VALID)
    gtk_widget_add_css_class (label, "warning");
}

static char *
weight_text (const UnsootVehicleRow *vehicle)
{
  g_autofree char *words = unsoot_weight_words (vehicle->gvwr_lb);
  g_autofree char *pounds = unsoot_format_number ((double) vehicle->gvwr_lb, 0);

  return words != NULL ? g_strdup_printf (_ ("%s lb, %s"), pounds, words) : NULL;
}

static void
show_identity (UnsootVehiclePage *self, const UnsootVehicleFile *file)
{
  const UnsootVehicleRow *vehicle = file->vehicle;
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *weight = weight_text (vehicle);

  unsoot_card_clear (self->identity);
  add_vin (facts, vehicle->vin);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Plate"), vehicle->plate);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Unit"), vehicle->unit_number);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Engine"), vehicle->engine);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Engine serial"), vehicle->engine_serial);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Engine family"),
                    file->family != NULL ? file->family->name : _ ("not settled yet"));
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Rated weight"), weight);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("EGR"), vehicle->has_egr ? _ ("yes") : _ ("none"));
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Particle filter"),
                    vehicle->has_dpf ? _ ("yes") : _ ("none"));
  if (vehicle->emission_altered)
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Altered"),
                      vehicle->emission_note != NULL
                          ? vehicle->emission_note
                          : _ ("parts of the emission control are missing or altered"));
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Note"), vehicle->note);
  gtk_box_append (GTK_BOX (self->identity), facts);
}

/* A card without a picture is not shown. */
static void
put_picture (UnsootCard *card, GtkWidget *picture)
{
  unsoot_card_clear (card);
  gtk_widget_set_visible (GTK_WIDGET (card), picture != NULL);
  if (picture != NULL)
    gtk_box_append (GTK_BOX (card), picture);
}

static void
show_pictures (UnsootVehiclePage *self, UnsootVehicleFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  put_picture (self->life, unsoot_vehicle_life_new (file, session));
  put_picture (self->readings, unsoot_vehicle_readings_new (file, session));
}

static void
show_due (UnsootVehiclePage *self, const UnsootVehicleFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *day = NULL, *exact = NULL;
  GtkWidget *label;

  unsoot_card_clear (self->due);
  if (file->due == NULL)
    {
      unsoot_card_say (self->due, _ ("Not reckoned yet: it follows from the first job done."));
      return;
    }
  day = unsoot_format_day (file->due->next_due_on, today);
  exact = unsoot_format_exact_day (file->due->next_due_on);
  label = gtk_label_new (day);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "title-2");
  gtk_widget_set_tooltip_text (label, exact);
  gtk_box_append (GTK_BOX (self->due), label);
  if (file->due->next_due_reason != NULL)
    unsoot_card_say (self->due, file->due->next_due_reason);
}

static void
show_meters (UnsootVehiclePage *self, const UnsootVehicleFile *file)
{
  static const UnsootTableColumn columns[]
      = { { "", FALSE, TRUE }, { "", FALSE, FALSE }, { "", TRUE, FALSE }, { NULL } };
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  GtkWidget *table = unsoot_table_new (_ ("Odometer and hours"), columns);

  unsoot_card_clear (self->meters);
  for (guint i = 0; i < MIN (file->meters->len, METERS_SHOWN); i++)
    {
      const UnsootMeterReadingRow *meter
          = g_ptr_array_index (file->meters, file->meters->len - 1 - i);
      g_autofree char *day = unsoot_format_day (meter->taken_on, today);
      g_autofree char *reading = unsoot_meter_markup (meter);
      const char *const cells[]
          = { day, meter->new_meter ? _ ("a new meter from here on") : "", reading };
      unsoot_table_add (UNSOOT_TABLE (table), cells);
    }
  if (file->meters->len > 0)
    gtk_box_append (GTK_BOX (self->meters), table);
  else
    unsoot_card_say (self->meters, _ ("Never read here."));
}

static void
show_history (UnsootVehiclePage *self, const UnsootVehicleFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_link_list_new (_ ("History"));

  unsoot_card_clear (self->history);
  for (guint i = 0; i < file->jobs->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_job_link_new (g_ptr_array_index (file->jobs, i), session, FALSE));
  if (file->jobs->len > 0)
    gtk_box_append (GTK_BOX (self->history), list);
  else
    unsoot_card_say (self->history, _ ("Nothing was done on it here yet."));
}

static void
show_vehicle (UnsootView *view, gpointer result)
{
  UnsootVehiclePage *self = UNSOOT_VEHICLE_PAGE (view);
  g_autoptr (UnsootVehicleFile) file = result;

  show_head (self, file);
  show_pictures (self, file);
  show_identity (self, file);
  show_due (self, file);
  show_meters (self, file);
  show_history (self, file);
  unsoot_phone_call_card (self->calls, file->calls, unsoot_view_get_session (view));
}

static void
unsoot_vehicle_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_vehicle_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_VEHICLE_PAGE);
}

static void
unsoot_vehicle_page_class_init (UnsootVehiclePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_vehicle_page_dispose;
  view_class->read = read_vehicle;
  view_class->free_result = (GDestroyNotify) unsoot_vehicle_file_free;
  view_class->show = show_vehicle;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/vehicle-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, life);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, readings);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, identity);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, due);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, meters);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, calls);
  gtk_widget_class_bind_template_child (widget_class, UnsootVehiclePage, history);
}

static void
unsoot_vehicle_page_init (UnsootVehiclePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
