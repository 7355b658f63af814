/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "find-row.h"

#include <glib/gi18n-lib.h>

#include "access.h"

struct _UnsootFindRow
{
  GtkListBoxRow parent_instance;

  /* template */
  GtkImage *icon;
  GtkLabel *title;
  GtkLabel *detail;
  GtkBox *acts;

  UnsootFoundKind kind;
  gint64 record;
};

typedef struct
{
  UnsootFoundKind kind;
  const char *slug;
  const char *books; /* where a booking for it begins; NULL: nowhere */
  const char *icon;
  const char *words;
} Kind;

static const Kind kinds[] = {
  { UNSOOT_FOUND_CUSTOMER, "customer", "booking-party", "unsoot-customer-symbolic",
    N_ ("Customers") },
  { UNSOOT_FOUND_VEHICLE, "vehicle", "booking-vehicle", "unsoot-vehicle-symbolic",
    N_ ("Vehicles") },
  { UNSOOT_FOUND_JOB, "job", "booking-job", "unsoot-job-symbolic", N_ ("Jobs") },
  { UNSOOT_FOUND_ESTIMATE, "estimate", NULL, "unsoot-papers-symbolic", N_ ("Estimates") },
  { UNSOOT_FOUND_INVOICE, "invoice", NULL, "unsoot-papers-symbolic", N_ ("Invoices") },
  { UNSOOT_FOUND_LOT, "lot", NULL, "unsoot-lot-symbolic", N_ ("Lots") },
  { UNSOOT_FOUND_ADAPTER, "adapter", NULL, "unsoot-adapter-symbolic", N_ ("Adapters") },
  { UNSOOT_FOUND_FLUID, "fluid", NULL, "unsoot-fluid-symbolic", N_ ("Fluids") },
};

G_DEFINE_FINAL_TYPE (UnsootFindRow, unsoot_find_row, GTK_TYPE_LIST_BOX_ROW)

static const Kind *
kind_of (UnsootFoundKind kind)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (kinds[i].kind == kind)
      return &kinds[i];
  g_return_val_if_reached (&kinds[0]);
}

static void
unsoot_find_row_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_find_row_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FIND_ROW);
}

static void
unsoot_find_row_class_init (UnsootFindRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_find_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/find-row.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFindRow, icon);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindRow, title);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindRow, detail);
  gtk_widget_class_bind_template_child (widget_class, UnsootFindRow, acts);
}

static void
unsoot_find_row_init (UnsootFindRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
unsoot_find_row_new (const UnsootFound *found)
{
  UnsootFindRow *self = g_object_new (UNSOOT_TYPE_FIND_ROW, NULL);
  g_autofree char *name = g_strdup_printf ("%s: %s, %s", unsoot_found_kind_words (found->kind),
                                           found->title, found->detail ? found->detail : "");

  self->kind = found->kind;
  self->record = found->row;
  gtk_image_set_from_icon_name (self->icon, kind_of (found->kind)->icon);
  gtk_label_set_text (self->title, found->title);
  gtk_label_set_text (self->detail, found->detail);
  gtk_widget_set_visible (GTK_WIDGET (self->detail), found->detail != NULL);
  unsoot_access_name (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}

UnsootFoundKind
unsoot_find_row_get_kind (UnsootFindRow *self)
{
  return self->kind;
}

const char *
unsoot_find_row_get_title (UnsootFindRow *self)
{
  return gtk_label_get_text (self->title);
}

const char *
unsoot_find_row_get_slug (UnsootFindRow *self)
{
  return kind_of (self->kind)->slug;
}

gint64
unsoot_find_row_get_record (UnsootFindRow *self)
{
  return self->record;
}

const char *
unsoot_find_row_get_booking (UnsootFindRow *self)
{
  return kind_of (self->kind)->books;
}

static void
add_act (UnsootFindRow *self, const char *verb, const char *slug, const char *keys)
{
  GtkWidget *button = gtk_button_new_with_label (verb);
  g_autofree char *name = g_strdup_printf ("%s: %s", verb, unsoot_find_row_get_title (self));

  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", slug, self->record);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "find.open");
  gtk_widget_set_tooltip_text (button, keys);
  unsoot_access_name (button, name);
  gtk_box_append (self->acts, button);
}

void
unsoot_find_row_offer (UnsootFindRow *self, gboolean books)
{
  if (gtk_widget_get_first_child (GTK_WIDGET (self->acts)) != NULL)
    return;
  add_act (self, _ ("Open"), unsoot_find_row_get_slug (self), _ ("Enter"));
  if (books && unsoot_find_row_get_booking (self) != NULL)
    add_act (self, _ ("Book"), unsoot_find_row_get_booking (self), _ ("Ctrl+Enter"));
}

void
unsoot_find_row_show_acts (UnsootFindRow *self, gboolean shown)
{
  gtk_widget_set_visible (GTK_WIDGET (self->acts), shown);
}

gboolean
unsoot_find_row_walk_acts (UnsootFindRow *self, gboolean back)
{
  GtkWidget *acts = GTK_WIDGET (self->acts), *act = gtk_widget_get_focus_child (acts);

  if (act != NULL)
    act = back ? gtk_widget_get_prev_sibling (act) : gtk_widget_get_next_sibling (act);
  else if (!back)
    act = gtk_widget_get_first_child (acts);
  return act != NULL && gtk_widget_grab_focus (act);
}

const char *
unsoot_found_kind_words (UnsootFoundKind kind)
{
  return _ (kind_of (kind)->words);
}
