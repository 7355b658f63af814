/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "find-box.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "access.h"
#include "find-row.h"
#include "store-call.h"
#include "vin.h"

enum
{
  MOST_OF_A_KIND = 5
};

struct _UnsootFindBox
{
  AdwBin parent_instance;

  /* template */
  GtkSearchEntry *entry;
  GtkLabel *hint;
  GtkPopover *popover;
  GtkStack *answer;
  GtkListBox *results;
  GtkBox *none;
  GtkLabel *nothing;
  GtkButton *fresh;

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;

  guint n_results;
};

G_DEFINE_FINAL_TYPE (UnsootFindBox, unsoot_find_box, ADW_TYPE_BIN)

static void
fold_up (UnsootFindBox *self)
{
  unsoot_store_slot_clear (&self->slot);
  gtk_popover_popdown (self->popover);
}

static void
open_record (UnsootFindBox *self, const char *slug, gint64 record)
{
  fold_up (self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", slug, record);
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autofree char *slug = NULL;
  gint64 record;

  /* A copy: the button that has it goes with the answer. */
  g_variant_get (parameter, "(sx)", &slug, &record);
  open_record (UNSOOT_FIND_BOX (widget), slug, record);
}

static void
open_row (UnsootFindBox *self, GtkListBoxRow *row)
{
  UnsootFindRow *chosen = UNSOOT_FIND_ROW (row);

  open_record (self, unsoot_find_row_get_slug (chosen), unsoot_find_row_get_record (chosen));
}

/* What nobody has yet begins a booking too: a VIN, a plate, a name. */
static void
begin (UnsootFindBox *self)
{
  g_autofree char *typed
      = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));

  fold_up (self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  gtk_widget_activate_action (GTK_WIDGET (self), "win.begin", "s", typed);
}

static void
begin_cb (GtkButton *button, UnsootFindBox *self)
{
  begin (self);
}

/* The chosen one where a booking can begin with it; with nothing found, what was typed. */
static void
book_chosen (UnsootFindBox *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->results);
  UnsootFindRow *chosen = row != NULL ? UNSOOT_FIND_ROW (row) : NULL;

  if (chosen == NULL)
    begin (self);
  else if (unsoot_find_row_get_booking (chosen) != NULL)
    open_record (self, unsoot_find_row_get_booking (chosen), unsoot_find_row_get_record (chosen));
}

static void
row_selected_cb (GtkListBox *results, GtkListBoxRow *chosen, UnsootFindBox *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (results, i)) != NULL; i++)
    unsoot_find_row_show_acts (UNSOOT_FIND_ROW (row), row == chosen);
}

static void
row_activated_cb (GtkListBox *results, GtkListBoxRow *row, UnsootFindBox *self)
{
  open_row (self, row);
}

static void
activate_cb (GtkSearchEntry *entry, UnsootFindBox *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->results);

  if (!gtk_widget_get_visible (GTK_WIDGET (self->popover)))
    return;
  if (row != NULL)
    open_row (self, row);
  else if (!unsoot_store_slot_busy (&self->slot))
    begin (self);
}

static void
stop_search_cb (GtkSearchEntry *entry, UnsootFindBox *self)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), "");
  fold_up (self);
}

/* Every kind begins with its name. */
static void
head_row_cb (GtkListBoxRow *row, GtkListBoxRow *before, gpointer user_data)
{
  const UnsootFoundKind kind = unsoot_find_row_get_kind (UNSOOT_FIND_ROW (row));
  GtkWidget *head;

  if (before != NULL && unsoot_find_row_get_kind (UNSOOT_FIND_ROW (before)) == kind)
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  head = gtk_label_new (unsoot_found_kind_words (kind));
  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_widget_add_css_class (head, "caption-heading");
  gtk_widget_add_css_class (head, "dim-label");
  gtk_widget_add_css_class (head, "find-head");
  gtk_list_box_row_set_header (row, head);
}

static void
clear_results (UnsootFindBox *self)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->results, 0)) != NULL)
    gtk_list_box_remove (self->results, GTK_WIDGET (row));
  self->n_results = 0;
}

/* @fresh: what could be begun with it; NULL: nothing. */
static void
say (UnsootFindBox *self, const char *sentence, const char *fresh)
{
  gtk_label_set_text (self->nothing, sentence);
  unsoot_access_name (GTK_WIDGET (self->nothing), sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->fresh), fresh != NULL);
  if (fresh != NULL)
    {
      gtk_button_set_label (self->fresh, fresh);
      unsoot_access_name (GTK_WIDGET (self->fresh), fresh);
    }
  gtk_stack_set_visible_child (self->answer, GTK_WIDGET (self->none));
}

static const char *
fresh_words (const char *typed)
{
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (typed);

  if (check->verdict != UNSOOT_VIN_WRONG_LENGTH)
    return _ ("New vehicle with this VIN");
  return strpbrk (typed, "0123456789") != NULL ? _ ("New vehicle with this plate")
                                               : _ ("New customer of this name");
}

static void
say_nothing_found (UnsootFindBox *self)
{
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  g_autofree char *sentence = g_strdup_printf (
      _ ("Nothing here is called “%s”. Try part of a name, a plate, or the end of a VIN."), typed);

  say (self, sentence, fresh_words (typed));
}

static gpointer
find (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_find (db, data, MOST_OF_A_KIND, error);
}

static void
found_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootFindBox *self = owner;
  g_autoptr (GPtrArray) hits = result;
  g_autofree char *refusal = unsoot_session_refusal (self->session, UNSOOT_DEED_BOOK);

  clear_results (self);
  self->n_results = hits != NULL ? hits->len : 0;
  for (guint i = 0; i < self->n_results; i++)
    {
      GtkWidget *row = unsoot_find_row_new (g_ptr_array_index (hits, i));
      unsoot_find_row_offer (UNSOOT_FIND_ROW (row), refusal == NULL);
      gtk_list_box_append (self->results, row);
    }
  if (error != NULL)
    say (self, error->message, NULL);
  else if (self->n_results == 0)
    say_nothing_found (self);
  else
    gtk_stack_set_visible_child_name (self->answer, "results");
  gtk_list_box_select_row (self->results, gtk_list_box_get_row_at_index (self->results, 0));
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      gtk_widget_set_size_request (GTK_WIDGET (self->popover),
                                   gtk_widget_get_width (GTK_WIDGET (self)), -1);
      gtk_popover_popup (self->popover);
    }
}

static void
changed_cb (GtkEditable *entry, UnsootFindBox *self)
{
  const char *typed = gtk_editable_get_text (entry);
  g_autofree char *words = g_strstrip (g_strdup (typed));

  gtk_widget_set_visible (GTK_WIDGET (self->hint), *typed == '\0');
  if (*words == '\0')
    {
      clear_results (self);
      fold_up (self);
      return;
    }
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), find,
                          g_steal_pointer (&words), g_free, (GDestroyNotify) g_ptr_array_unref,
                          found_done, self);
}

static void
scroll_to (UnsootFindBox *self, GtkWidget *row)
{
  GtkWidget *window = gtk_widget_get_ancestor (row, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (window));
  double y;

  if (gtk_widget_translate_coordinates (row, GTK_WIDGET (self->results), 0, 0, NULL, &y))
    gtk_adjustment_clamp_page (adjustment, y, y + gtk_widget_get_height (row));
}

static gboolean
move_chosen (UnsootFindBox *self, int step)
{
  GtkListBoxRow *chosen = gtk_list_box_get_selected_row (self->results);
  const int index = chosen != NULL ? gtk_list_box_row_get_index (chosen) + step : 0;
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->results, MAX (index, 0));

  if (row != NULL)
    {
      gtk_list_box_select_row (self->results, row);
      scroll_to (self, GTK_WIDGET (row));
    }
  return GDK_EVENT_STOP;
}

static void
return_to_entry (UnsootFindBox *self)
{
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (self->entry));

  gtk_text_grab_focus_without_selecting (GTK_TEXT (text));
}

/* Tab walks the acts of the chosen one and comes back to what is typed. */
static gboolean
walk_acts (UnsootFindBox *self, gboolean in_answer, gboolean back)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->results);

  if (back && !in_answer)
    return GDK_EVENT_PROPAGATE;
  if (row != NULL && unsoot_find_row_walk_acts (UNSOOT_FIND_ROW (row), back))
    return GDK_EVENT_STOP;
  if (row == NULL && !in_answer && gtk_widget_grab_focus (GTK_WIDGET (self->fresh)))
    return GDK_EVENT_STOP;
  return_to_entry (self);
  return GDK_EVENT_STOP;
}

static gboolean
walk_rows (UnsootFindBox *self, int step)
{
  return_to_entry (self);
  return move_chosen (self, step);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
                UnsootFindBox *self)
{
  GtkWidget *where = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));
  const gboolean in_answer = where == GTK_WIDGET (self->popover);

  if (!gtk_widget_get_visible (GTK_WIDGET (self->popover)))
    return GDK_EVENT_PROPAGATE;
  if ((key == GDK_KEY_Return || key == GDK_KEY_KP_Enter) && (state & GDK_CONTROL_MASK) != 0)
    {
      book_chosen (self);
      return GDK_EVENT_STOP;
    }
  if (key == GDK_KEY_Down || key == GDK_KEY_KP_Down)
    return walk_rows (self, 1);
  if (key == GDK_KEY_Up || key == GDK_KEY_KP_Up)
    return walk_rows (self, -1);
  if (key == GDK_KEY_Tab || key == GDK_KEY_KP_Tab || key == GDK_KEY_ISO_Left_Tab)
    return walk_acts (self, in_answer, (state & GDK_SHIFT_MASK) != 0);
  if (key == GDK_KEY_Escape && in_answer)
    {
      return_to_entry (self);
      return GDK_EVENT_STOP;
    }
  return GDK_EVENT_PROPAGATE;
}

static void
focus_left_cb (GtkEventControllerFocus *focus, UnsootFindBox *self)
{
  fold_up (self);
}

static gboolean
unsoot_find_box_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (UNSOOT_FIND_BOX (widget)->entry));
}

static void
unsoot_find_box_dispose (GObject *object)
{
  UnsootFindBox *self = UNSOOT_FIND_BOX (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  if (self->popover != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->popover));
  G_OBJECT_CLASS (unsoot_find_box_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FIND_BOX);
}

static void
unsoot_find_box_class_init (UnsootFindBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_find_box_dispose;
  widget_class->grab_focus = unsoot_find_box_grab_focus;
  gtk_widget_class_install_action (widget_class, "find.open", "(sx)", open_action);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/find-box.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, entry);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, hint);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, popover);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, answer);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, results);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, none);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, nothing);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindBox, fresh);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_search_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_pressed_cb);
  gtk_widget_class_bind_template_callback (widget_class, focus_left_cb);
}

static void
unsoot_find_box_init (UnsootFindBox *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->popover), GTK_WIDGET (self));
  unsoot_access_stack (self->answer);
  gtk_list_box_set_header_func (self->results, head_row_cb, NULL, NULL);
}

void
unsoot_find_box_set_session (UnsootFindBox *self, UnsootSession *session)
{
  g_set_object (&self->session, session);
}

void
unsoot_find_box_type (UnsootFindBox *self, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}

gboolean
unsoot_find_box_has_answer (UnsootFindBox *self)
{
  return !unsoot_store_slot_busy (&self->slot);
}

guint
unsoot_find_box_get_n_results (UnsootFindBox *self)
{
  return self->n_results;
}

const char *
unsoot_find_box_get_chosen (UnsootFindBox *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->results);

  return row != NULL ? unsoot_find_row_get_title (UNSOOT_FIND_ROW (row)) : NULL;
}
