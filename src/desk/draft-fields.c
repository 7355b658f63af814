/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft-fields.h"

#include <adwaita.h>

#include "draft-text.h"

typedef struct
{
  const char *name;
  char *label;
  GtkWidget *field; /* borrowed: it stands in the same form */
  const UnsootFieldWays *ways;
  gboolean always;
  char *first; /* what the record has */
  char *base;  /* what it had when typing began */
} Field;

struct UnsootDraftFields
{
  GPtrArray *fields; /* Field */
};

static void
field_free (gpointer data)
{
  Field *field = data;

  g_free (field->label);
  g_free (field->first);
  g_free (field->base);
  g_free (field);
}

static char *
field_text (const Field *field)
{
  return field->ways->dup_text (field->field);
}

static gboolean
field_typed (const Field *field)
{
  g_autofree char *text = field_text (field);

  return g_strcmp0 (text, field->first) != 0;
}

static char *
entry_text (GtkWidget *field)
{
  return g_strdup (gtk_editable_get_text (GTK_EDITABLE (field)));
}

static void
entry_set (GtkWidget *field, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field), text);
  gtk_editable_set_position (GTK_EDITABLE (field), -1);
}

/* By its words: the same choice may stand at another place by then. */
static char *
choice_text (GtkWidget *field)
{
  gpointer item = gtk_drop_down_get_selected_item (GTK_DROP_DOWN (field));

  return g_strdup (item != NULL ? gtk_string_object_get_string (item) : "");
}

static void
choice_set (GtkWidget *field, const char *text)
{
  GListModel *model = gtk_drop_down_get_model (GTK_DROP_DOWN (field));

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GtkStringObject) item = g_list_model_get_item (model, i);
      if (g_str_equal (gtk_string_object_get_string (item), text))
        gtk_drop_down_set_selected (GTK_DROP_DOWN (field), i);
    }
}

static char *
check_text (GtkWidget *field)
{
  return g_strdup (gtk_check_button_get_active (GTK_CHECK_BUTTON (field)) ? "1" : "0");
}

static void
check_set (GtkWidget *field, const char *text)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (field), g_str_equal (text, "1"));
}

static char *
words_text (GtkWidget *field)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (field));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
words_set (GtkWidget *field, const char *text)
{
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (field)), text, -1);
}

static const UnsootFieldWays entry_ways = { "changed", entry_text, entry_set, TRUE };
static const UnsootFieldWays choice_ways = { "notify::selected", choice_text, choice_set, TRUE };
static const UnsootFieldWays check_ways = { "toggled", check_text, check_set, FALSE };
/* Its buffer tells of changes, not it. */
static const UnsootFieldWays words_ways = { "changed", words_text, words_set, FALSE };

/* Whether what is typed there is not for other eyes. */
static gboolean
is_secret (GtkWidget *field)
{
  return GTK_IS_PASSWORD_ENTRY (field) || ADW_IS_PASSWORD_ENTRY_ROW (field)
         || (GTK_IS_ENTRY (field) && !gtk_entry_get_visibility (GTK_ENTRY (field)));
}

UnsootDraftFields *
unsoot_draft_fields_new (void)
{
  UnsootDraftFields *self = g_new0 (UnsootDraftFields, 1);

  self->fields = g_ptr_array_new_with_free_func (field_free);
  return self;
}

void
unsoot_draft_fields_free (UnsootDraftFields *self)
{
  g_ptr_array_unref (self->fields);
  g_free (self);
}

static const UnsootFieldWays *
usual_ways (GtkWidget *field)
{
  if (GTK_IS_DROP_DOWN (field))
    return &choice_ways;
  if (GTK_IS_CHECK_BUTTON (field))
    return &check_ways;
  return GTK_IS_TEXT_VIEW (field) ? &words_ways : &entry_ways;
}

void
unsoot_draft_fields_add (UnsootDraftFields *self, const char *name, const char *label,
                         GtkWidget *widget, const UnsootFieldWays *ways, GCallback changed,
                         gpointer owner)
{
  gpointer source = widget;
  Field *field;

  g_return_if_fail (!is_secret (widget));
  field = g_new0 (Field, 1);
  field->name = name;
  field->label = g_strdup (label);
  field->field = widget;
  field->ways = ways != NULL ? ways : usual_ways (widget);
  g_ptr_array_add (self->fields, field);
  if (field->ways == &words_ways)
    source = gtk_text_view_get_buffer (GTK_TEXT_VIEW (widget));
  g_signal_connect_object (source, field->ways->signal, changed, owner, G_CONNECT_SWAPPED);
}

void
unsoot_draft_fields_keep_always (UnsootDraftFields *self, const char *name)
{
  for (guint i = 0; i < self->fields->len; i++)
    {
      Field *field = g_ptr_array_index (self->fields, i);
      field->always |= g_str_equal (field->name, name);
    }
}

void
unsoot_draft_fields_settle (UnsootDraftFields *self)
{
  for (guint i = 0; i < self->fields->len; i++)
    {
      Field *field = g_ptr_array_index (self->fields, i);

      g_free (field->first);
      g_free (field->base);
      field->first = field_text (field);
      field->base = g_strdup (field->first);
    }
}

char *
unsoot_draft_fields_dup_typed (const UnsootDraftFields *self)
{
  g_autoptr (UnsootDraftText) text = unsoot_draft_text_new ();
  gboolean typed = FALSE;

  for (guint i = 0; i < self->fields->len; i++)
    {
      const Field *field = g_ptr_array_index (self->fields, i);
      g_autofree char *now = field_text (field);

      if (g_strcmp0 (now, field->first) != 0)
        typed = TRUE;
      else if (!field->always)
        continue;
      unsoot_draft_text_add (text, field->name, field->base, now);
    }
  return typed ? unsoot_draft_text_to_json (text) : NULL;
}

/* What the record has by now in a field that was typed into before it had that. */
static void
add_theirs (GString *theirs, const Field *field)
{
  g_string_append_printf (theirs, "%s%s", theirs->len > 0 ? "; " : "", field->label);
  if (field->ways->spoken)
    g_string_append_printf (theirs, ": %s", *field->first != '\0' ? field->first : "–");
}

gboolean
unsoot_draft_fields_put_back (UnsootDraftFields *self, const char *json, GString *theirs)
{
  g_autoptr (UnsootDraftText) kept = unsoot_draft_text_from_json (json);
  g_autoptr (GPtrArray) free_fields = g_ptr_array_new ();
  gboolean any = FALSE;

  if (kept == NULL)
    return FALSE;
  /* Before the first is filled, because one field may fill another. */
  for (guint i = 0; i < self->fields->len; i++)
    if (!field_typed (g_ptr_array_index (self->fields, i)))
      g_ptr_array_add (free_fields, g_ptr_array_index (self->fields, i));
  for (guint i = 0; i < free_fields->len; i++)
    {
      Field *field = g_ptr_array_index (free_fields, i);
      const char *base, *typed;

      if (!unsoot_draft_text_find (kept, field->name, &base, &typed))
        continue;
      field->ways->set_text (field->field, typed);
      if (g_str_equal (typed, field->first))
        continue;
      any = TRUE;
      if (g_str_equal (base, field->first))
        continue;
      add_theirs (theirs, field);
      g_free (field->base);
      field->base = g_strdup (base);
    }
  return any;
}

void
unsoot_draft_fields_reset (UnsootDraftFields *self)
{
  for (guint i = 0; i < self->fields->len; i++)
    {
      const Field *field = g_ptr_array_index (self->fields, i);
      field->ways->set_text (field->field, field->first);
    }
}
