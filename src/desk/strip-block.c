/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "strip-block.h"

#include "access.h"
#include "side-mark.h"

enum
{
  RADIUS = 7,
  NATURAL_WIDTH = 96,
  DETAIL_LEAST = 60 /* fewer letters than that say nothing */
};

struct _UnsootStripBlock
{
  GtkButton parent_instance;

  double progress;
  GtkWidget *head;   /* borrowed: the usual words' first line */
  GtkWidget *marks;  /* borrowed: what stands before the detail; NULL in a low block */
  GtkWidget *detail; /* borrowed; likewise */
  GtkWidget *tight;  /* what is shown where the first line does not fit */
};

G_DEFINE_FINAL_TYPE (UnsootStripBlock, unsoot_strip_block, GTK_TYPE_BUTTON)

static int
natural_width (GtkWidget *widget)
{
  int natural;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  return natural;
}

/* A short job gets the width of its time and no more: what does not fit is told in fewer words,
 * not pushed out. */
static void
block_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
               int *natural, int *minimum_baseline, int *natural_baseline)
{
  GtkWidget *child = gtk_button_get_child (GTK_BUTTON (widget));

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = 0;
      *natural = NATURAL_WIDTH;
      return;
    }
  gtk_widget_measure (child, orientation, -1, minimum, natural, NULL, NULL);
}

static void
allocate_child (GtkWidget *child, gboolean visible, int width, int height)
{
  int least;

  gtk_widget_set_child_visible (child, visible);
  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  gtk_widget_allocate (child, MAX (least, width), height, -1, NULL);
}

static void
block_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  UnsootStripBlock *self = UNSOOT_STRIP_BLOCK (widget);
  const gboolean tight = natural_width (self->head) > width;

  if (self->detail != NULL)
    gtk_widget_set_child_visible (self->detail,
                                  width - natural_width (self->marks) >= DETAIL_LEAST);
  allocate_child (gtk_button_get_child (GTK_BUTTON (widget)), !tight, width, height);
  allocate_child (self->tight, tight, width, height);
}

static GtkSizeRequestMode
block_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

static void
fill (GtkSnapshot *snapshot, const graphene_rect_t *ground, float share, const GdkRGBA *ink)
{
  const float x = ground->origin.x, y = ground->origin.y;
  const float width = ground->size.width * share, height = ground->size.height;
  GdkRGBA tint = *ink;

  tint.alpha = 0.30f;
  gtk_snapshot_append_color (snapshot, &tint, &GRAPHENE_RECT_INIT (x, y, width, height));
  gtk_snapshot_append_color (snapshot, ink, &GRAPHENE_RECT_INIT (x, y + height - 3, width, 3));
}

static void
unsoot_strip_block_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootStripBlock *self = UNSOOT_STRIP_BLOCK (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GskRoundedRect whole;
  GtkBorder padding;
  GdkRGBA colour;

  /* The origin is that of the content: the ground reaches beyond it. */
  gtk_style_context_get_padding (style, &padding);
  gsk_rounded_rect_init_from_rect (
      &whole,
      &GRAPHENE_RECT_INIT ((float) -padding.left, (float) -padding.top,
                           (float) (gtk_widget_get_width (widget) + padding.left + padding.right),
                           (float) (gtk_widget_get_height (widget) + padding.top + padding.bottom)),
      RADIUS);
  gtk_snapshot_push_rounded_clip (snapshot, &whole);
  if (self->progress > 0 && gtk_style_context_lookup_color (style, "accent_bg_color", &colour))
    fill (snapshot, &whole.bounds, (float) self->progress, &colour);
  GTK_WIDGET_CLASS (unsoot_strip_block_parent_class)->snapshot (widget, snapshot);
  gtk_snapshot_pop (snapshot);
}

static void
unsoot_strip_block_dispose (GObject *object)
{
  g_clear_pointer (&UNSOOT_STRIP_BLOCK (object)->tight, gtk_widget_unparent);
  G_OBJECT_CLASS (unsoot_strip_block_parent_class)->dispose (object);
}

static void
unsoot_strip_block_class_init (UnsootStripBlockClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_strip_block_dispose;
  GTK_WIDGET_CLASS (klass)->snapshot = unsoot_strip_block_snapshot;
}

static void
unsoot_strip_block_init (UnsootStripBlock *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_set_layout_manager (widget,
                                 gtk_custom_layout_new (block_mode, block_measure, block_allocate));
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  gtk_widget_add_css_class (widget, "strip-block");
}

static const char *
state_class (UnsootStripState state)
{
  switch (state)
    {
    case UNSOOT_STRIP_PLANNED:
      return "planned";
    case UNSOOT_STRIP_HERE:
      return "here";
    case UNSOOT_STRIP_RUNNING:
      return "running";
    case UNSOOT_STRIP_DONE:
      return "done";
    case UNSOOT_STRIP_STOPPED:
      return "stopped";
    }
  g_return_val_if_reached ("planned");
}

static GtkWidget *
line_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
append_icon (GtkBox *box, const char *icon)
{
  GtkWidget *image = gtk_image_new_from_icon_name (icon);

  gtk_accessible_update_state (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_box_append (box, image);
}

static GtkWidget *
head_new (const UnsootStripItem *item, gboolean with_sides)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  if (item->state == UNSOOT_STRIP_DONE)
    append_icon (GTK_BOX (head), "object-select-symbolic");
  if (item->state == UNSOOT_STRIP_STOPPED)
    append_icon (GTK_BOX (head), "unsoot-stop-symbolic");
  gtk_box_append (GTK_BOX (head), line_new (item->title, "heading"));
  if (with_sides)
    unsoot_side_marks_append (GTK_BOX (head), item->sides);
  return head;
}

static GtkWidget *
marks_new (const UnsootStripItem *item)
{
  GtkWidget *marks = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  unsoot_side_marks_append (GTK_BOX (marks), item->sides);
  return marks;
}

static GtkWidget *
foot_new (UnsootStripBlock *self, const UnsootStripItem *item)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  self->marks = marks_new (item);
  self->detail = line_new (item->detail, "caption");
  gtk_box_append (GTK_BOX (foot), self->marks);
  gtk_box_append (GTK_BOX (foot), self->detail);
  return foot;
}

/* The same in fewer words: a plate on two lines, and in a low block the marks alone. */
static GtkWidget *
tight_new (const UnsootStripItem *item, gboolean low)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *title;

  gtk_widget_set_valign (body, GTK_ALIGN_CENTER);
  gtk_accessible_update_state (GTK_ACCESSIBLE (body), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  if (!low)
    {
      title = line_new (item->title, "caption-heading");
      gtk_label_set_wrap (GTK_LABEL (title), TRUE);
      gtk_label_set_lines (GTK_LABEL (title), 2);
      gtk_box_append (GTK_BOX (body), title);
    }
  gtk_box_append (GTK_BOX (body), marks_new (item));
  return body;
}

GtkWidget *
unsoot_strip_block_new (const UnsootStripItem *item, gboolean low)
{
  UnsootStripBlock *self = g_object_new (UNSOOT_TYPE_STRIP_BLOCK, NULL);
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_valign (body, GTK_ALIGN_CENTER);
  self->head = head_new (item, low);
  gtk_box_append (GTK_BOX (body), self->head);
  if (!low)
    gtk_box_append (GTK_BOX (body), foot_new (self, item));
  gtk_button_set_child (GTK_BUTTON (self), body);
  self->tight = tight_new (item, low);
  gtk_widget_set_parent (self->tight, GTK_WIDGET (self));
  self->progress = CLAMP (item->progress, 0.0, 1.0);
  gtk_widget_add_css_class (GTK_WIDGET (self), state_class (item->state));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), item->name);
  unsoot_access_name (GTK_WIDGET (self), item->name);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self), "(sx)", "job", item->job_id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self), "win.open");
  return GTK_WIDGET (self);
}

double
unsoot_strip_block_get_progress (UnsootStripBlock *self)
{
  return self->progress;
}
