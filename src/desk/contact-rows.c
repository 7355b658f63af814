/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "contact-rows.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "entry-form.h"
#include "record-json.h"

#define MOST_FIELDS 5

/* One list of rows, each a few entries. */
typedef struct
{
  GtkWidget *box; /* borrowed */
  const UnsootRecordType *type;
  const char *add; /* label of the button that adds one, translated */
  const char *fields[MOST_FIELDS + 1];
  const char *hints[MOST_FIELDS + 1];
} List;

struct _UnsootContactRows
{
  GtkBox parent_instance;

  List phones;
  List addresses;
};

enum
{
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootContactRows, unsoot_contact_rows, GTK_TYPE_BOX)

static void
unsoot_contact_rows_class_init (UnsootContactRowsClass *klass)
{
  signals[EDITED] = g_signal_new ("edited", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
}

static void
edited_cb (GtkWidget *box)
{
  g_signal_emit (gtk_widget_get_ancestor (box, UNSOOT_TYPE_CONTACT_ROWS), signals[EDITED], 0);
}

static const UnsootField *
field_of (const UnsootRecordType *type, const char *name)
{
  for (gsize i = 0; i < type->n_fields; i++)
    if (g_str_equal (type->fields[i].name, name))
      return &type->fields[i];
  g_return_val_if_reached (NULL);
}

static void
remove_cb (GtkWidget *button)
{
  GtkWidget *row = gtk_widget_get_parent (button), *box = gtk_widget_get_parent (row);

  gtk_box_remove (GTK_BOX (box), row);
  edited_cb (box);
}

/* @record (nullable) is copied: its id and version stay with the row. */
static void
add_row (List *list, gconstpointer record)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *away = gtk_button_new_from_icon_name ("edit-delete-symbolic");
  gpointer kept
      = record != NULL ? unsoot_record_copy (list->type, record) : unsoot_record_new (list->type);

  for (gsize i = 0; list->fields[i] != NULL; i++)
    {
      GtkWidget *entry = gtk_entry_new ();
      g_autofree char *text
          = unsoot_record_field_text (kept, field_of (list->type, list->fields[i]));

      gtk_editable_set_width_chars (GTK_EDITABLE (entry), 6);
      gtk_widget_set_hexpand (entry, TRUE);
      gtk_entry_set_placeholder_text (GTK_ENTRY (entry), list->hints[i]);
      unsoot_form_name (entry, list->hints[i]);
      unsoot_form_set_text (entry, text);
      g_signal_connect_swapped (entry, "changed", G_CALLBACK (edited_cb), list->box);
      gtk_box_append (GTK_BOX (row), entry);
    }
  gtk_widget_add_css_class (away, "flat");
  gtk_widget_set_tooltip_text (away, _ ("Take it out"));
  unsoot_form_name (away, _ ("Take it out"));
  g_signal_connect (away, "clicked", G_CALLBACK (remove_cb), NULL);
  gtk_box_append (GTK_BOX (row), away);
  g_object_set_data_full (G_OBJECT (row), "record", kept, list->type->free);
  gtk_box_append (GTK_BOX (list->box), row);
}

static void
add_cb (GtkWidget *button, List *list)
{
  add_row (list, NULL);
  gtk_widget_child_focus (gtk_widget_get_last_child (list->box), GTK_DIR_TAB_FORWARD);
}

static void
build (UnsootContactRows *self, List *list)
{
  GtkWidget *add = gtk_button_new_with_label (list->add);

  list->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  gtk_widget_add_css_class (add, "pill-choice");
  unsoot_access_name (add, list->add);
  g_signal_connect (add, "clicked", G_CALLBACK (add_cb), list);
  gtk_box_append (GTK_BOX (self), list->box);
  gtk_box_append (GTK_BOX (self), add);
}

static void
unsoot_contact_rows_init (UnsootContactRows *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->phones = (List){ .type = &unsoot_phone_row_type,
                         .add = _ ("Add a phone"),
                         .fields = { "label", "number", NULL },
                         .hints = { _ ("Mobile, office …"), _ ("Phone number"), NULL } };
  self->addresses = (List){ .type = &unsoot_address_row_type,
                            .add = _ ("Add an address"),
                            .fields = { "label", "street", "town", "region", "postcode" },
                            .hints = { _ ("Billing, yard …"), _ ("Street"), _ ("Town"), _ ("State"),
                                       _ ("Postcode") } };
  build (self, &self->phones);
  build (self, &self->addresses);
}

GtkWidget *
unsoot_contact_rows_new (void)
{
  return g_object_new (UNSOOT_TYPE_CONTACT_ROWS, NULL);
}

static void
set_rows (List *list, const GPtrArray *records)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (list->box)) != NULL)
    gtk_box_remove (GTK_BOX (list->box), row);
  for (guint i = 0; records != NULL && i < records->len; i++)
    add_row (list, g_ptr_array_index (records, i));
}

void
unsoot_contact_rows_set (UnsootContactRows *self, const GPtrArray *phones,
                         const GPtrArray *addresses)
{
  set_rows (&self->phones, phones);
  set_rows (&self->addresses, addresses);
}

/* Whether anything was typed from field @first on. */
static gboolean
read_row (const List *list, GtkWidget *row, gpointer record, gsize first)
{
  GtkWidget *entry = gtk_widget_get_first_child (row);
  gboolean any = FALSE;

  for (gsize i = 0; list->fields[i] != NULL; i++, entry = gtk_widget_get_next_sibling (entry))
    {
      char **text = G_STRUCT_MEMBER_P (record, field_of (list->type, list->fields[i])->offset);
      g_free (*text);
      *text = unsoot_form_dup_text (entry);
      any = any || (i >= first && *text != NULL);
    }
  return any;
}

static GPtrArray *
get_rows (const List *list, gsize first)
{
  GPtrArray *records = g_ptr_array_new_with_free_func (list->type->free);

  for (GtkWidget *row = gtk_widget_get_first_child (list->box); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      gpointer record
          = unsoot_record_copy (list->type, g_object_get_data (G_OBJECT (row), "record"));
      if (read_row (list, row, record, first))
        g_ptr_array_add (records, record);
      else
        unsoot_record_free (list->type, record);
    }
  return records;
}

/* A row with a label and nothing else is none. */
GPtrArray *
unsoot_contact_rows_get_phones (UnsootContactRows *self)
{
  return get_rows (&self->phones, 1);
}

GPtrArray *
unsoot_contact_rows_get_addresses (UnsootContactRows *self)
{
  return get_rows (&self->addresses, 1);
}

static void
add_json (JsonObject *object, const char *name, const List *list)
{
  g_autoptr (GPtrArray) records = get_rows (list, 0);
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < records->len; i++)
    json_array_add_element (array, unsoot_record_to_json (list->type, records->pdata[i]));
  json_object_set_array_member (object, name, array);
}

static char *
to_text (GtkWidget *field)
{
  UnsootContactRows *self = UNSOOT_CONTACT_ROWS (field);
  g_autoptr (JsonObject) object = json_object_new ();
  g_autoptr (JsonNode) root = json_node_alloc ();

  add_json (object, "phones", &self->phones);
  add_json (object, "addresses", &self->addresses);
  json_node_init_object (root, object);
  return json_to_string (root, FALSE);
}

static void
set_json (JsonObject *object, const char *name, List *list)
{
  JsonNode *node = json_object_get_member (object, name);
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func (list->type->free);

  if (node == NULL || !JSON_NODE_HOLDS_ARRAY (node))
    return;
  for (guint i = 0; i < json_array_get_length (json_node_get_array (node)); i++)
    g_ptr_array_add (
        records, unsoot_record_from_json (list->type,
                                          json_array_get_element (json_node_get_array (node), i)));
  set_rows (list, records);
}

static void
from_text (GtkWidget *field, const char *text)
{
  UnsootContactRows *self = UNSOOT_CONTACT_ROWS (field);
  g_autoptr (JsonNode) root = json_from_string (text, NULL);

  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    return;
  set_json (json_node_get_object (root), "phones", &self->phones);
  set_json (json_node_get_object (root), "addresses", &self->addresses);
}

void
unsoot_contact_rows_watch (UnsootContactRows *self, UnsootFormDraft *draft)
{
  static const UnsootFieldWays ways = { "edited", to_text, from_text, FALSE };

  unsoot_form_draft_watch_as (draft, "reach", _ ("Phones and addresses"), GTK_WIDGET (self), &ways);
}

static const UnsootRecordHead *
find_head (const GPtrArray *records, gint64 id)
{
  for (guint i = 0; id != 0 && i < records->len; i++)
    if (((const UnsootRecordHead *) records->pdata[i])->id == id)
      return records->pdata[i];
  return NULL;
}

static void
rebase (List *list, const GPtrArray *former, const GPtrArray *theirs)
{
  for (GtkWidget *row = gtk_widget_get_first_child (list->box); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      UnsootRecordHead *kept = g_object_get_data (G_OBJECT (row), "record");
      const UnsootRecordHead *newer = find_head (theirs, kept->id);

      kept->version = newer != NULL ? newer->version : 0;
      if (newer == NULL)
        kept->id = 0;
    }
  for (guint i = 0; i < theirs->len; i++)
    if (find_head (former, ((const UnsootRecordHead *) theirs->pdata[i])->id) == NULL)
      add_row (list, theirs->pdata[i]);
}

void
unsoot_contact_rows_rebase (UnsootContactRows *self, const GPtrArray *former_phones,
                            const GPtrArray *former_addresses, const GPtrArray *phones,
                            const GPtrArray *addresses)
{
  rebase (&self->phones, former_phones, phones);
  rebase (&self->addresses, former_addresses, addresses);
}

static void
add_words (GString *words, const List *list, gconstpointer record)
{
  g_autoptr (GString) line = g_string_new (NULL);

  for (gsize i = 0; list->fields[i] != NULL; i++)
    {
      g_autofree char *text
          = unsoot_record_field_text (record, field_of (list->type, list->fields[i]));
      if (*text != '\0')
        g_string_append_printf (line, "%s%s", line->len > 0 ? " " : "", text);
    }
  g_string_append_printf (words, "%s%s", words->len > 0 ? "\n" : "", line->str);
}

static char *
words_of (const List *list, const GPtrArray *records)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < records->len; i++)
    add_words (words, list, records->pdata[i]);
  return g_string_free (words, FALSE);
}

char *
unsoot_contact_rows_phone_words (UnsootContactRows *self, const GPtrArray *phones)
{
  return words_of (&self->phones, phones);
}

char *
unsoot_contact_rows_address_words (UnsootContactRows *self, const GPtrArray *addresses)
{
  return words_of (&self->addresses, addresses);
}
