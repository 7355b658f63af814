/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "conflict-box.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "table.h"

struct _UnsootConflictBox
{
  GtkBox parent_instance;

  GtkWidget *table; /* borrowed child; NULL: nothing is shown */
};

enum
{
  MINE,
  THEIRS,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootConflictBox, unsoot_conflict_box, GTK_TYPE_BOX)

static void
mine_cb (UnsootConflictBox *self)
{
  g_signal_emit (self, signals[MINE], 0);
}

static void
theirs_cb (UnsootConflictBox *self)
{
  g_signal_emit (self, signals[THEIRS], 0);
}

static void
unsoot_conflict_box_class_init (UnsootConflictBoxClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  signals[MINE]
      = g_signal_new ("mine", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[THEIRS]
      = g_signal_new ("theirs", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
button_new (const char *label, GCallback callback, UnsootConflictBox *self)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  unsoot_access_name (button, label);
  g_signal_connect_swapped (button, "clicked", callback, self);
  return button;
}

static void
unsoot_conflict_box_init (UnsootConflictBox *self)
{
  GtkWidget *says = gtk_label_new (_ ("Someone else saved this meanwhile. Nothing is lost yet: "
                                      "choose which of both is to stand."));
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "trouble");
  gtk_label_set_wrap (GTK_LABEL (says), TRUE);
  gtk_label_set_xalign (GTK_LABEL (says), 0);
  gtk_box_append (GTK_BOX (self), says);
  gtk_box_append (GTK_BOX (buttons),
                  button_new (_ ("Keep what I typed"), G_CALLBACK (mine_cb), self));
  gtk_box_append (GTK_BOX (buttons), button_new (_ ("Take theirs"), G_CALLBACK (theirs_cb), self));
  gtk_box_append (GTK_BOX (self), buttons);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
unsoot_conflict_box_new (void)
{
  return g_object_new (UNSOOT_TYPE_CONFLICT_BOX, NULL);
}

static const char *
label_of (const UnsootFieldLabel *labels, const char *field)
{
  for (; labels->field != NULL; labels++)
    if (g_str_equal (labels->field, field))
      return _ (labels->label);
  return NULL;
}

static char *
plain_words (gconstpointer record, const UnsootField *field)
{
  g_autofree char *text = unsoot_record_field_text (record, field);

  if (field->type == UNSOOT_FIELD_BOOL)
    return g_strdup (g_str_equal (text, "1") ? _ ("yes") : _ ("no"));
  if (unsoot_field_zero_is_null (field) && g_str_equal (text, "0"))
    return g_strdup ("");
  return g_steal_pointer (&text);
}

static char *
cell_of (const char *text)
{
  return *text != '\0' ? g_markup_escape_text (text, -1) : g_strdup ("–");
}

gboolean
unsoot_conflict_box_add (UnsootConflictBox *self, const char *label, const char *mine,
                         const char *theirs)
{
  g_autofree char *first = cell_of (mine), *second = cell_of (theirs);
  const char *const cells[] = { label, first, second };

  if (g_str_equal (mine, theirs))
    return FALSE;
  unsoot_table_add (UNSOOT_TABLE (self->table), cells);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  return TRUE;
}

static void
begin_table (UnsootConflictBox *self)
{
  const UnsootTableColumn columns[] = { { "", FALSE, FALSE },
                                        { _ ("You typed"), FALSE, TRUE },
                                        { _ ("They saved"), FALSE, TRUE },
                                        { NULL } };

  if (self->table != NULL)
    gtk_box_remove (GTK_BOX (self), self->table);
  self->table = unsoot_table_new (_ ("Both versions"), columns);
  gtk_box_insert_child_after (GTK_BOX (self), self->table,
                              gtk_widget_get_first_child (GTK_WIDGET (self)));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

gboolean
unsoot_conflict_box_show (UnsootConflictBox *self, const UnsootRecordType *type, gconstpointer mine,
                          gconstpointer theirs, const UnsootFieldLabel *labels,
                          UnsootFieldWords words, gpointer owner)
{
  gboolean differs = FALSE;

  begin_table (self);
  for (gsize i = 0; i < type->n_fields; i++)
    {
      const UnsootField *field = &type->fields[i];
      const char *label = label_of (labels, field->name);
      g_autofree char *ours = words != NULL ? words (owner, field->name, mine) : NULL;
      g_autofree char *other = words != NULL ? words (owner, field->name, theirs) : NULL;

      if (ours == NULL)
        ours = plain_words (mine, field);
      if (other == NULL)
        other = plain_words (theirs, field);
      if (label != NULL)
        differs |= unsoot_conflict_box_add (self, label, ours, other);
    }
  return differs;
}
