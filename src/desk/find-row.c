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

  UnsootFoundKind kind;
  gint64 record;
};

typedef struct
{
  UnsootFoundKind kind;
  const char *slug;
  const char *icon;
  const char *words;
} Kind;

static const Kind kinds[] = {
  { UNSOOT_FOUND_CUSTOMER, "customer", "unsoot-customer-symbolic", N_ ("Customers") },
  { UNSOOT_FOUND_VEHICLE, "vehicle", "unsoot-vehicle-symbolic", N_ ("Vehicles") },
  { UNSOOT_FOUND_JOB, "job", "unsoot-job-symbolic", N_ ("Jobs") },
  { UNSOOT_FOUND_ESTIMATE, "estimate", "unsoot-papers-symbolic", N_ ("Estimates") },
  { UNSOOT_FOUND_INVOICE, "invoice", "unsoot-papers-symbolic", N_ ("Invoices") },
  { UNSOOT_FOUND_LOT, "lot", "unsoot-lot-symbolic", N_ ("Lots") },
  { UNSOOT_FOUND_ADAPTER, "adapter", "unsoot-adapter-symbolic", N_ ("Adapters") },
  { UNSOOT_FOUND_FLUID, "fluid", "unsoot-fluid-symbolic", N_ ("Fluids") },
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
unsoot_found_kind_words (UnsootFoundKind kind)
{
  return _ (kind_of (kind)->words);
}
