/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "new-choice.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "access.h"
#include "customer-edit.h"
#include "vehicle-edit.h"

struct _UnsootNewChoice
{
  AdwWindow parent_instance;

  /* template */
  GtkListBox *choices;

  /* owned */
  UnsootView *view;
};

G_DEFINE_FINAL_TYPE (UnsootNewChoice, unsoot_new_choice, ADW_TYPE_WINDOW)

/* Something that may be new, and whose it is. */
typedef struct
{
  const char *title;  /* N_ () */
  const char *detail; /* N_ () */
  const char *icon;
  UnsootDeed deed;
  const char *needs; /* the record that has to be in front; NULL: none */
  const char *own;   /* the places whose own it is, a space before and after each */
  void (*begin) (UnsootView *view);
} Choice;

static void
open_place (UnsootView *view, const char *slug, gint64 record)
{
  gtk_widget_activate_action (GTK_WIDGET (view), "win.open", "(sx)", slug, record);
}

static void
begin_booking (UnsootView *view)
{
  open_place (view, "booking", 0);
}

static void
begin_for_customer (UnsootView *view)
{
  open_place (view, "booking-party", unsoot_view_get_record (view));
}

static void
begin_for_vehicle (UnsootView *view)
{
  open_place (view, "booking-vehicle", unsoot_view_get_record (view));
}

static void
begin_customer (UnsootView *view)
{
  unsoot_customer_edit_open (GTK_WIDGET (view), unsoot_view_get_session (view), 0);
}

static void
begin_vehicle (UnsootView *view)
{
  unsoot_vehicle_edit_open (GTK_WIDGET (view), unsoot_view_get_session (view), 0,
                            unsoot_view_get_record (view));
}

static void
begin_delivery (UnsootView *view)
{
  if (!gtk_widget_activate_action (GTK_WIDGET (view), "view.receive", NULL))
    open_place (view, "fluids", 0);
}

static void
begin_loan (UnsootView *view)
{
  if (!gtk_widget_activate_action (GTK_WIDGET (view), "view.lend", NULL))
    open_place (view, "adapters", 0);
}

static const Choice choices[] = {
  { N_ ("Booking for this customer"), N_ ("Their vehicle, the service and a time"),
    "unsoot-planner-symbolic", UNSOOT_DEED_BOOK, "customer", " customer ", begin_for_customer },
  { N_ ("Booking for this vehicle"), N_ ("The service and a time"), "unsoot-planner-symbolic",
    UNSOOT_DEED_BOOK, "vehicle", " vehicle ", begin_for_vehicle },
  { N_ ("Booking"), N_ ("A call or a walk-in: who, which vehicle, what and when"),
    "unsoot-planner-symbolic", UNSOOT_DEED_BOOK, NULL, " today planner jobs job vehicles ",
    begin_booking },
  { N_ ("Customer"), N_ ("Somebody new, without a booking yet"), "unsoot-customer-symbolic",
    UNSOOT_DEED_EDIT_CUSTOMER, NULL, " customers ", begin_customer },
  { N_ ("Vehicle of this customer"), N_ ("One more that is theirs"), "unsoot-vehicle-symbolic",
    UNSOOT_DEED_EDIT_VEHICLE, "customer", " ", begin_vehicle },
  { N_ ("Delivery of a fluid"), N_ ("What came in, by its lot and expiry"), "unsoot-fluid-symbolic",
    UNSOOT_DEED_RECEIVE_DELIVERY, NULL, " fluids fluid lot ", begin_delivery },
  { N_ ("Loan of an adapter"), N_ ("To a job, a colleague or another shop"),
    "unsoot-adapter-symbolic", UNSOOT_DEED_LEND_ADAPTER, NULL, " adapters adapter kits loan ",
    begin_loan },
};

static gboolean
is_offered (const Choice *choice, UnsootView *view)
{
  g_autofree char *refusal = unsoot_session_refusal (unsoot_view_get_session (view), choice->deed);

  return refusal == NULL
         && (choice->needs == NULL || g_strcmp0 (choice->needs, unsoot_view_get_slug (view)) == 0);
}

static gboolean
is_own (const Choice *choice, UnsootView *view)
{
  g_autofree char *word = g_strdup_printf (" %s ", unsoot_view_get_slug (view));

  return strstr (choice->own, word) != NULL;
}

/* Those that are offered, the place's own first. */
static gsize
list_choices (UnsootView *view, const Choice **list)
{
  gsize n = 0;

  for (int own = 1; own >= 0; own--)
    for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
      if (is_offered (&choices[i], view) && is_own (&choices[i], view) == own)
        list[n++] = &choices[i];
  return n;
}

static void
activated_cb (GtkListBox *list, GtkListBoxRow *row, UnsootNewChoice *self)
{
  const Choice *choice = g_object_get_data (G_OBJECT (row), "choice");
  g_autoptr (UnsootView) view = g_object_ref (self->view);

  gtk_window_close (GTK_WINDOW (self));
  choice->begin (view);
}

static void
unsoot_new_choice_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_NEW_CHOICE (object)->view);
  G_OBJECT_CLASS (unsoot_new_choice_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_NEW_CHOICE);
}

static void
unsoot_new_choice_class_init (UnsootNewChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_new_choice_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/new-choice.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootNewChoice, choices);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
unsoot_new_choice_init (UnsootNewChoice *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
add_choice (UnsootNewChoice *self, const Choice *choice)
{
  GtkWidget *row = adw_action_row_new (), *icon = gtk_image_new_from_icon_name (choice->icon);

  gtk_accessible_update_state (GTK_ACCESSIBLE (icon), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (choice->title));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), _ (choice->detail));
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), icon);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_object_set_data (G_OBJECT (row), "choice", (gpointer) choice);
  unsoot_access_name_row (row, _ (choice->title));
  gtk_list_box_append (self->choices, row);
}

char *
unsoot_new_choice_ask (UnsootView *view)
{
  const Choice *list[G_N_ELEMENTS (choices)];
  const gsize n = list_choices (view, list);
  UnsootNewChoice *self;

  if (n == 0)
    return unsoot_session_refusal (unsoot_view_get_session (view), UNSOOT_DEED_BOOK);
  if (n == 1)
    {
      list[0]->begin (view);
      return NULL;
    }
  self = g_object_new (UNSOOT_TYPE_NEW_CHOICE, "transient-for",
                       GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (view))), NULL);
  self->view = g_object_ref (view);
  for (gsize i = 0; i < n; i++)
    add_choice (self, list[i]);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (self->choices, 0)));
  return NULL;
}
