/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-start.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-bell.h"
#include "side-mark.h"
#include "vehicles.h"

struct _UnsootBayStart
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *vehicle;
  GtkLabel *procedure;
  GtkBox *doses;
  GtkBox *machines;
  GtkLabel *trouble;
  GtkLabel *tried;
  GtkButton *try_alarm;
  GtkButton *begin;

  GtkToggleButton *first; /* borrowed from machines */
  gint64 machine_id;
};

enum
{
  BEGIN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayStart, unsoot_bay_start, GTK_TYPE_BOX)

static void
begin_cb (GtkButton *button, UnsootBayStart *self)
{
  unsoot_bay_start_say (self, NULL);
  g_signal_emit (self, signals[BEGIN], 0, self->machine_id);
}

static void
tried_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootBayStart) self = user_data;

  /* The page may be gone meanwhile, and its children with it. */
  if (self->tried == NULL)
    return;
  gtk_label_set_text (self->tried, unsoot_heard_words (unsoot_bay_bell_ring_finish (result)));
  gtk_widget_set_sensitive (GTK_WIDGET (self->try_alarm), TRUE);
}

static void
try_cb (GtkButton *button, UnsootBayStart *self)
{
  gtk_widget_set_sensitive (GTK_WIDGET (button), FALSE);
  gtk_label_set_text (self->tried, _ ("Listen …"));
  unsoot_bay_bell_ring_async (NULL, tried_cb, g_object_ref (self));
}

static void
unsoot_bay_start_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bay_start_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_START);
}

static void
unsoot_bay_start_class_init (UnsootBayStartClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_start_dispose;
  signals[BEGIN] = g_signal_new ("begin", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/bay-start.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, vehicle);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, procedure);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, doses);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, machines);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, tried);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, try_alarm);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStart, begin);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, try_cb);
}

static void
unsoot_bay_start_init (UnsootBayStart *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
toggled_cb (GtkToggleButton *button, UnsootBayStart *self)
{
  if (gtk_toggle_button_get_active (button))
    self->machine_id = *(gint64 *) g_object_get_data (G_OBJECT (button), "machine");
}

static GtkWidget *
tank_line_new (const UnsootTankState *state)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *words = gtk_label_new (state->words);
  UnsootSide side = UNSOOT_SIDE_FUEL;

  unsoot_side_from_slug (state->tank->side, &side);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_widget_add_css_class (words, "text-body");
  gtk_box_append (GTK_BOX (line), unsoot_side_mark_new_plain (side));
  gtk_box_append (GTK_BOX (line), words);
  return line;
}

static char *
machine_name (const UnsootBayMachine *machine)
{
  g_autoptr (GString) name = g_string_new (machine->row->name);

  if (machine->busy)
    g_string_append_printf (name, ", %s", _ ("in use by another run"));
  for (guint i = 0; i < machine->tanks->len; i++)
    {
      const UnsootTankState *state = g_ptr_array_index (machine->tanks, i);
      g_string_append_printf (name, ", %s", state->words);
    }
  return g_string_free (g_steal_pointer (&name), FALSE);
}

static void
add_machine (UnsootBayStart *self, const UnsootBayMachine *machine)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *title = gtk_label_new (machine->row->name);
  g_autofree char *name = machine_name (machine);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "machine-name");
  gtk_box_append (GTK_BOX (face), title);
  for (guint i = 0; i < machine->tanks->len; i++)
    gtk_box_append (GTK_BOX (face), tank_line_new (g_ptr_array_index (machine->tanks, i)));
  if (machine->busy)
    {
      GtkWidget *busy = gtk_label_new (_ ("in use by another run"));
      gtk_label_set_xalign (GTK_LABEL (busy), 0);
      gtk_widget_add_css_class (busy, "text-body");
      gtk_box_append (GTK_BOX (face), busy);
      gtk_widget_add_css_class (button, "barred");
    }
  gtk_button_set_child (GTK_BUTTON (button), face);
  gtk_widget_set_hexpand (button, TRUE);
  gtk_widget_add_css_class (button, "choice");
  g_object_set_data_full (G_OBJECT (button), "machine",
                          g_memdup2 (&machine->row->id, sizeof machine->row->id), g_free);
  g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
  if (self->first == NULL)
    self->first = GTK_TOGGLE_BUTTON (button);
  else
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), self->first);
  if (machine->row->id == self->machine_id)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  unsoot_access_name (button, name);
  gtk_box_append (self->machines, button);
}

static void
empty (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

static void
show_job (UnsootBayStart *self, const UnsootJobFile *job)
{
  g_autofree char *vehicle = unsoot_vehicle_title (job->vehicle);

  gtk_label_set_text (self->vehicle, vehicle);
  gtk_label_set_text (self->procedure,
                      job->procedure != NULL ? job->procedure->title : job->service->name);
  empty (self->doses);
  if (job->job->fuel_dose_ml > 0)
    gtk_box_append (self->doses, unsoot_side_mark_new (UNSOOT_SIDE_FUEL, job->job->fuel_dose_ml));
  if (job->job->intake_dose_ml > 0)
    gtk_box_append (self->doses,
                    unsoot_side_mark_new (UNSOOT_SIDE_INTAKE, job->job->intake_dose_ml));
}

void
unsoot_bay_start_show (UnsootBayStart *self, const UnsootBayFile *file)
{
  const UnsootJobFile *job = file->view->file;

  g_return_if_fail (UNSOOT_IS_BAY_START (self));
  if (self->machine_id == 0 && job->booking != NULL)
    self->machine_id = job->booking->machine_id;
  show_job (self, job);
  const gboolean again = self->first != NULL;
  empty (self->machines);
  self->first = NULL;
  for (guint i = 0; i < file->machines->len; i++)
    add_machine (self, g_ptr_array_index (file->machines, i));
  if (!again)
    gtk_widget_grab_focus (GTK_WIDGET (self->begin));
}

void
unsoot_bay_start_say (UnsootBayStart *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}

void
unsoot_bay_start_set_busy (UnsootBayStart *self, gboolean busy)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->begin), !busy);
}
