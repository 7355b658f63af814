/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-board.h"

#include <math.h>

#include "planner-paint.h"

enum
{
  THRESHOLD = 6 /* pixels before a click becomes a drag */
};

struct _UnsootPlannerBoard
{
  GtkWidget parent_instance;

  UnsootDayStrip *strip; /* the child */

  /* owned */
  GArray *free; /* UnsootStripSpan */

  gint64 midnight;
  guint block; /* that is held */
  UnsootGrip grip;
  UnsootStripSpan from; /* where it was */
  UnsootStripSpan held; /* where it would be */
  UnsootVerdict verdict;
  gboolean dragging;
};

enum
{
  PROPOSED,
  DROPPED,
  GIVEN_UP,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootPlannerBoard, unsoot_planner_board, GTK_TYPE_WIDGET)

static void
hold (UnsootPlannerBoard *self, UnsootStripSpan span)
{
  if (span.from == self->held.from && span.to == self->held.to && span.lane == self->held.lane)
    return;
  self->held = span;
  self->verdict = UNSOOT_VERDICT_ASKED;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[PROPOSED], 0, self->block);
}

static void
take (UnsootPlannerBoard *self, guint block, UnsootGrip grip)
{
  guint n;
  const UnsootStripSpan *spans = unsoot_day_strip_get_spans (self->strip, &n);

  self->block = block;
  self->grip = grip;
  self->from = self->held = spans[block];
  self->verdict = UNSOOT_VERDICT_ASKED;
}

static void
let_go (UnsootPlannerBoard *self)
{
  self->grip = UNSOOT_GRIP_NONE;
  self->dragging = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static UnsootGrip
hit (UnsootPlannerBoard *self, double x, double y, guint *block)
{
  guint n;
  const UnsootStripSpan *spans = unsoot_day_strip_get_spans (self->strip, &n);
  g_autofree UnsootStripRect *rects = g_new0 (UnsootStripRect, n);

  unsoot_strip_place (unsoot_day_strip_get_scale (self->strip), spans, n, rects);
  return unsoot_planner_hit (rects, n, x, y, block);
}

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, UnsootPlannerBoard *self)
{
  guint block;
  const UnsootGrip grip = hit (self, x, y, &block);

  if (grip == UNSOOT_GRIP_NONE)
    gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
  else
    take (self, block, grip);
}

static void
drag_update_cb (GtkGestureDrag *gesture, double dx, double dy, UnsootPlannerBoard *self)
{
  const UnsootStripScale *scale = unsoot_day_strip_get_scale (self->strip);
  double x, y;
  gint64 seconds;

  if (self->grip == UNSOOT_GRIP_NONE)
    return;
  if (!self->dragging && hypot (dx, dy) < THRESHOLD)
    return;
  if (!self->dragging)
    {
      self->dragging = TRUE;
      /* From here on it is no click on the block. */
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
    }
  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  seconds = llround (dx / (scale->width - scale->left) * (double) (scale->to - scale->from));
  hold (self,
        unsoot_planner_pull (self->from, self->grip, seconds,
                             unsoot_planner_lane_at (
                                 scale, (int) unsoot_day_strip_get_n_lanes (self->strip), y + dy),
                             self->midnight));
}

static gboolean
is_elsewhere (UnsootPlannerBoard *self)
{
  return self->held.from != self->from.from || self->held.to != self->from.to
         || self->held.lane != self->from.lane;
}

static void
drop (UnsootPlannerBoard *self)
{
  if (is_elsewhere (self))
    g_signal_emit (self, signals[DROPPED], 0, self->block);
  else
    unsoot_planner_board_give_up (self);
}

static void
drag_end_cb (GtkGestureDrag *gesture, double dx, double dy, UnsootPlannerBoard *self)
{
  if (self->dragging)
    {
      self->dragging = FALSE;
      drop (self);
    }
  else if (self->grip != UNSOOT_GRIP_NONE && !is_elsewhere (self))
    let_go (self);
}

/* The block that has the keyboard. */
static gboolean
focused (UnsootPlannerBoard *self, guint *block)
{
  GtkWidget *widget;

  for (guint i = 0; (widget = unsoot_day_strip_get_block (self->strip, i)) != NULL; i++)
    if (gtk_widget_is_focus (widget))
      {
        *block = i;
        return TRUE;
      }
  return FALSE;
}

static void
step (UnsootPlannerBoard *self, UnsootGrip grip, int steps, int lanes)
{
  const int last = (int) unsoot_day_strip_get_n_lanes (self->strip) - 1;
  const UnsootStripSpan held = self->held;

  self->grip = grip;
  hold (self, unsoot_planner_pull (held, grip, (gint64) steps * UNSOOT_PLANNER_STEP,
                                   CLAMP (held.lane + lanes, 0, last), self->midnight));
}

static gboolean
pressed_with_ctrl (UnsootPlannerBoard *self, guint key, gboolean shift)
{
  guint block;

  if (self->grip == UNSOOT_GRIP_NONE)
    {
      if (!focused (self, &block))
        return FALSE;
      take (self, block, UNSOOT_GRIP_BODY);
    }
  switch (key)
    {
    case GDK_KEY_Left:
      step (self, shift ? UNSOOT_GRIP_END : UNSOOT_GRIP_BODY, -1, 0);
      return TRUE;
    case GDK_KEY_Right:
      step (self, shift ? UNSOOT_GRIP_END : UNSOOT_GRIP_BODY, 1, 0);
      return TRUE;
    case GDK_KEY_Up:
      step (self, UNSOOT_GRIP_BODY, 0, -1);
      return TRUE;
    case GDK_KEY_Down:
      step (self, UNSOOT_GRIP_BODY, 0, 1);
      return TRUE;
    default:
      if (!is_elsewhere (self))
        let_go (self);
      return FALSE;
    }
}

static gboolean
key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state,
        UnsootPlannerBoard *self)
{
  const GdkModifierType mods = state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK | GDK_ALT_MASK);

  if (mods == GDK_CONTROL_MASK || mods == (GDK_CONTROL_MASK | GDK_SHIFT_MASK))
    return pressed_with_ctrl (self, key, (mods & GDK_SHIFT_MASK) != 0);
  if (mods != 0 || self->grip == UNSOOT_GRIP_NONE)
    return FALSE;
  if (key == GDK_KEY_Return || key == GDK_KEY_KP_Enter)
    {
      drop (self);
      return TRUE;
    }
  if (key == GDK_KEY_Escape || key == GDK_KEY_Tab)
    {
      unsoot_planner_board_give_up (self);
      return key == GDK_KEY_Escape;
    }
  return FALSE;
}

static void
unsoot_planner_board_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootPlannerBoard *self = UNSOOT_PLANNER_BOARD (widget);
  const UnsootStripScale *scale = unsoot_day_strip_get_scale (self->strip);

  unsoot_planner_paint_free (widget, snapshot, scale, self->free);
  GTK_WIDGET_CLASS (unsoot_planner_board_parent_class)->snapshot (widget, snapshot);
  if (self->grip != UNSOOT_GRIP_NONE && is_elsewhere (self))
    unsoot_planner_paint_held (widget, snapshot, scale, &self->held, self->verdict);
}

static void
unsoot_planner_board_dispose (GObject *object)
{
  UnsootPlannerBoard *self = UNSOOT_PLANNER_BOARD (object);

  if (self->strip != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->strip));
  self->strip = NULL;
  G_OBJECT_CLASS (unsoot_planner_board_parent_class)->dispose (object);
}

static void
unsoot_planner_board_finalize (GObject *object)
{
  g_array_unref (UNSOOT_PLANNER_BOARD (object)->free);
  G_OBJECT_CLASS (unsoot_planner_board_parent_class)->finalize (object);
}

static void
unsoot_planner_board_class_init (UnsootPlannerBoardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_planner_board_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_planner_board_finalize;
  widget_class->snapshot = unsoot_planner_board_snapshot;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[PROPOSED] = g_signal_new ("proposed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[DROPPED] = g_signal_new ("dropped", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[GIVEN_UP]
      = g_signal_new ("given-up", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_planner_board_init (UnsootPlannerBoard *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->free = g_array_new (FALSE, FALSE, sizeof (UnsootStripSpan));
  self->strip = UNSOOT_DAY_STRIP (unsoot_day_strip_new ());
  gtk_widget_set_parent (GTK_WIDGET (self->strip), GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (drag), GTK_PHASE_CAPTURE);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

void
unsoot_planner_board_set_day (UnsootPlannerBoard *self, const char *const *lanes, gint64 midnight,
                              gint64 opens, gint64 closes, GTimeZone *zone,
                              const UnsootStripItem *items, gsize n_items)
{
  g_return_if_fail (UNSOOT_IS_PLANNER_BOARD (self));

  self->midnight = midnight;
  unsoot_planner_board_give_up (self);
  unsoot_day_strip_set_day (self->strip, lanes, midnight, opens, closes, zone, items, n_items);
}

void
unsoot_planner_board_set_now (UnsootPlannerBoard *self, gint64 now)
{
  unsoot_day_strip_set_now (self->strip, now);
}

void
unsoot_planner_board_set_free (UnsootPlannerBoard *self, const UnsootStripSpan *spans, gsize n)
{
  g_array_set_size (self->free, 0);
  g_array_append_vals (self->free, spans, (guint) n);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
unsoot_planner_board_get_held (UnsootPlannerBoard *self, guint *block, UnsootStripSpan *span)
{
  *block = self->block;
  *span = self->held;
  return self->grip != UNSOOT_GRIP_NONE && is_elsewhere (self);
}

void
unsoot_planner_board_set_verdict (UnsootPlannerBoard *self, UnsootVerdict verdict)
{
  self->verdict = verdict;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
unsoot_planner_board_give_up (UnsootPlannerBoard *self)
{
  if (self->grip == UNSOOT_GRIP_NONE)
    return;
  let_go (self);
  g_signal_emit (self, signals[GIVEN_UP], 0);
}

void
unsoot_planner_board_focus (UnsootPlannerBoard *self, guint block)
{
  GtkWidget *widget = unsoot_day_strip_get_block (self->strip, block);

  if (widget != NULL)
    gtk_widget_grab_focus (widget);
}
