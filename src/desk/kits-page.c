/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kits-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "card.h"
#include "columns.h"
#include "deed-button.h"
#include "families.h"
#include "kit-deeds.h"
#include "kit-words.h"
#include "table.h"

typedef struct
{
  UnsootFamilyRow *family;
  GPtrArray *items; /* UnsootKitItemRow */
} Kit;

struct _UnsootKitsPage
{
  UnsootView parent_instance;

  /* template */
  UnsootColumns *cards;
  GtkWidget *nothing;

  GPtrArray *kits; /* owned: Kit */
};

G_DEFINE_FINAL_TYPE (UnsootKitsPage, unsoot_kits_page, UNSOOT_TYPE_VIEW)

static void
kit_free (gpointer data)
{
  Kit *kit = data;

  unsoot_family_row_free (kit->family);
  g_clear_pointer (&kit->items, g_ptr_array_unref);
  g_free (kit);
}

static gpointer
read_kits (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) kits = g_ptr_array_new_with_free_func (kit_free);
  g_autoptr (GPtrArray) families = unsoot_family_list (db, error);

  for (guint i = 0; families != NULL && i < families->len; i++)
    {
      const UnsootFamilyRow *family = g_ptr_array_index (families, i);
      Kit *kit = g_new0 (Kit, 1);

      g_ptr_array_add (kits, kit);
      kit->family = unsoot_record_copy (&unsoot_family_row_type, family);
      kit->items = unsoot_family_kit (db, family->id, error);
      if (kit->items == NULL)
        return NULL;
    }
  return families != NULL ? g_steal_pointer (&kits) : NULL;
}

/* Which part a button is for; both last as long as the page's data, and so do the buttons. */
typedef struct
{
  UnsootKitsPage *page;
  const Kit *kit;
  const UnsootKitItemRow *item; /* NULL: a new one */
  gboolean takes_out;
} Part;

static void
part_cb (GtkWidget *button, Part *part)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (part->page));

  if (part->item == NULL)
    unsoot_kit_add_open (GTK_WIDGET (part->page), session, part->kit->family);
  else if (part->takes_out)
    unsoot_kit_remove (GTK_WIDGET (part->page), session, part->item);
  else
    unsoot_kit_edit_open (GTK_WIDGET (part->page), session, part->kit->family, part->item);
}

static GtkWidget *
part_button_new (UnsootKitsPage *self, const Kit *kit, const UnsootKitItemRow *item,
                 gboolean takes_out, const char *label, const char *icon)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *button = unsoot_deed_button_new (session, UNSOOT_DEED_EDIT_FAMILY, label,
                                              item != NULL ? item->name : kit->family->name);
  Part *part = g_new0 (Part, 1);

  part->page = self;
  part->kit = kit;
  part->item = item;
  part->takes_out = takes_out;
  if (icon != NULL)
    {
      unsoot_deed_button_draw (button, icon, label);
      gtk_widget_add_css_class (button, "small");
    }
  g_signal_connect_data (button, "clicked", G_CALLBACK (part_cb), part,
                         (GClosureNotify) (void (*) (void)) g_free, 0);
  return button;
}

static gint64
add_item (UnsootKitsPage *self, UnsootTable *table, const Kit *kit, const UnsootKitItemRow *item)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  const gint64 sum = item->quantity * item->price_minor;
  g_autofree char *name = g_markup_escape_text (item->name, -1);
  g_autofree char *quantity = g_strdup_printf ("%d", (int) item->quantity);
  g_autofree char *price = unsoot_session_money (session, item->price_minor);
  int kind = 0;
  int row;

  unsoot_slug_find (unsoot_kit_kinds, item->kind, &kind);
  const char *const cells[] = { _ (unsoot_kit_kinds[kind].words), name, quantity, price, NULL };
  row = unsoot_table_add (table, cells);
  gtk_box_append (GTK_BOX (buttons),
                  part_button_new (self, kit, item, FALSE, _ ("Change"), "document-edit-symbolic"));
  gtk_box_append (GTK_BOX (buttons),
                  part_button_new (self, kit, item, TRUE, _ ("Take out"), "list-remove-symbolic"));
  gtk_widget_add_css_class (buttons, "small");
  unsoot_table_put (table, row, 4, buttons);
  return sum;
}

static GtkWidget *
kit_card_new (UnsootKitsPage *self, const Kit *kit)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootTableColumn columns[]
      = { { _ ("Kind"), FALSE, FALSE }, { _ ("Name"), FALSE, TRUE }, { _ ("Number"), TRUE, FALSE },
          { _ ("Each"), TRUE, FALSE },  { "", FALSE, FALSE },        { NULL, FALSE, FALSE } };
  GtkWidget *card = g_object_new (UNSOOT_TYPE_CARD, "title", kit->family->name, NULL);
  GtkWidget *table = unsoot_table_new (kit->family->name, columns);
  GtkWidget *button = part_button_new (self, kit, NULL, FALSE, _ ("Add a part…"), NULL);
  gint64 sum = 0;

  for (guint i = 0; i < kit->items->len; i++)
    sum += add_item (self, UNSOOT_TABLE (table), kit, g_ptr_array_index (kit->items, i));
  if (kit->items->len > 0)
    {
      g_autofree char *money = unsoot_session_money (session, sum);
      g_autofree char *total = g_markup_printf_escaped ("<b>%s</b>", money);
      const char *const cells[] = { _ ("Kit"), NULL, NULL, total, NULL };
      unsoot_table_add_total (UNSOOT_TABLE (table), cells);
      gtk_box_append (GTK_BOX (card), table);
    }
  else
    {
      g_object_ref_sink (table);
      g_object_unref (table);
      unsoot_card_say (UNSOOT_CARD (card), _ ("This family needs no parts."));
    }
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (card), button);
  return card;
}

static void
show_kits (UnsootView *view, gpointer result)
{
  UnsootKitsPage *self = UNSOOT_KITS_PAGE (view);
  GtkWidget *card;

  unsoot_view_set_title (view, _ ("Kits"));
  while ((card = gtk_widget_get_first_child (GTK_WIDGET (self->cards))) != NULL)
    gtk_widget_unparent (card);
  g_clear_pointer (&self->kits, g_ptr_array_unref);
  self->kits = result;
  for (guint i = 0; i < self->kits->len; i++)
    gtk_widget_set_parent (kit_card_new (self, g_ptr_array_index (self->kits, i)),
                           GTK_WIDGET (self->cards));
  gtk_widget_set_visible (self->nothing, self->kits->len == 0);
}

static void
unsoot_kits_page_dispose (GObject *object)
{
  UnsootKitsPage *self = UNSOOT_KITS_PAGE (object);

  G_OBJECT_CLASS (unsoot_kits_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_KITS_PAGE);
  g_clear_pointer (&self->kits, g_ptr_array_unref);
}

static void
unsoot_kits_page_class_init (UnsootKitsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_kits_page_dispose;
  view_class->read = read_kits;
  view_class->free_result = (GDestroyNotify) g_ptr_array_unref;
  view_class->show = show_kits;
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/kits-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootKitsPage, cards);
  gtk_widget_class_bind_template_child (widget_class, UnsootKitsPage, nothing);
}

static void
unsoot_kits_page_init (UnsootKitsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
