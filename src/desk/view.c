/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "empty-page.h"

enum
{
  SECONDS_UNTIL_SPINNER = 3
};

typedef struct
{
  /* owned */
  UnsootSession *session;
  GtkWidget *content;
  char *title;
  char *slug;

  gint64 record;
  UnsootStoreSlot slot;
  guint64 generation; /* of the store when it was read last */
  gulong changed_id;
  guint spinner_id;
  gboolean settled;
  gboolean gone; /* disposed: the toolkit still signals while it takes its parts down */
} UnsootViewPrivate;

enum
{
  PROP_SESSION = 1,
  PROP_RECORD,
  PROP_SLUG,
  PROP_CONTENT,
  PROP_TITLE,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

enum
{
  SHOWN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (UnsootView, unsoot_view, ADW_TYPE_BIN)

#define PRIVATE(self) ((UnsootViewPrivate *) unsoot_view_get_instance_private (self))

static void
stop_spinner (UnsootView *self)
{
  g_clear_handle_id (&PRIVATE (self)->spinner_id, g_source_remove);
}

static gboolean
show_spinner_cb (gpointer user_data)
{
  UnsootView *self = user_data;
  GtkWidget *spinner = gtk_spinner_new ();

  PRIVATE (self)->spinner_id = 0;
  gtk_widget_set_size_request (spinner, 32, 32);
  gtk_widget_set_halign (spinner, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (spinner, GTK_ALIGN_CENTER);
  unsoot_access_name (spinner, _ ("Reading"));
  gtk_spinner_start (GTK_SPINNER (spinner));
  adw_bin_set_child (ADW_BIN (self), spinner);
  return G_SOURCE_REMOVE;
}

static void
show_trouble (UnsootView *self, const GError *error)
{
  GtkWidget *page = unsoot_empty_page_new ("dialog-warning-symbolic", _ ("This could not be read"),
                                           error->message, _ ("Try again"), "view.reload");

  adw_bin_set_child (ADW_BIN (self), page);
}

static void
read_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootView *self = owner;
  UnsootViewPrivate *private = PRIVATE (self);

  stop_spinner (self);
  private->settled = TRUE;
  if (error != NULL)
    {
      show_trouble (self, error);
    }
  else
    {
      UNSOOT_VIEW_GET_CLASS (self)->show (self, result);
      if (adw_bin_get_child (ADW_BIN (self)) != private->content)
        adw_bin_set_child (ADW_BIN (self), private->content);
    }
  g_signal_emit (self, signals[SHOWN], 0);
}

void
unsoot_view_reload (UnsootView *self)
{
  UnsootViewPrivate *private = PRIVATE (self);
  UnsootViewClass *klass = UNSOOT_VIEW_GET_CLASS (self);
  UnsootViewQuery *query;
  UnsootStore *store;

  if (private->gone)
    return;
  store = unsoot_session_get_store (private->session);
  query = g_new0 (UnsootViewQuery, 1);
  query->record = private->record;
  query->now = unsoot_session_now (private->session);
  if (private->slug != NULL)
    g_strlcpy (query->slug, private->slug, sizeof query->slug);
  if (klass->ask != NULL)
    klass->ask (self, query);
  private->generation = unsoot_store_get_generation (store);
  if (adw_bin_get_child (ADW_BIN (self)) != private->content && private->spinner_id == 0)
  private->spinner_id = g_timeout_add_seconds (SECONDS_UNTIL_SPINNER, show_spinner_cb, self);
  unsoot_store_slot_call (&private->slot, store, klass->read, query, g_free, klass->free_result,
                          read_done, self);
}

static void
store_changed_cb (UnsootStore *store, UnsootView *self)
{
  unsoot_view_reload (self);
}

static void
unsoot_view_map (GtkWidget *widget)
{
  UnsootView *self = UNSOOT_VIEW (widget);
  UnsootViewPrivate *private = PRIVATE (self);
  UnsootStore *store = unsoot_session_get_store (private->session);

  GTK_WIDGET_CLASS (unsoot_view_parent_class)->map (widget);
  private->changed_id = g_signal_connect (store, "changed", G_CALLBACK (store_changed_cb), self);
  if (private->settled && private->generation != unsoot_store_get_generation (store))
    unsoot_view_reload (self);
}

static void
unsoot_view_unmap (GtkWidget *widget)
{
  UnsootViewPrivate *private = PRIVATE (UNSOOT_VIEW (widget));

  g_clear_signal_handler (&private->changed_id, unsoot_session_get_store (private->session));
  GTK_WIDGET_CLASS (unsoot_view_parent_class)->unmap (widget);
}

static void
reload_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  unsoot_view_reload (UNSOOT_VIEW (widget));
}

/* The reading starts at once, before the view is even in the window. */
static void
unsoot_view_constructed (GObject *object)
{
  G_OBJECT_CLASS (unsoot_view_parent_class)->constructed (object);
  unsoot_view_reload (UNSOOT_VIEW (object));
}

static void
unsoot_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  UnsootViewPrivate *private = PRIVATE (UNSOOT_VIEW (object));

  switch (id)
    {
    case PROP_SESSION:
      g_value_set_object (value, private->session);
      break;
    case PROP_RECORD:
      g_value_set_int64 (value, private->record);
      break;
    case PROP_SLUG:
      g_value_set_string (value, private->slug);
      break;
    case PROP_CONTENT:
      g_value_set_object (value, private->content);
      break;
    case PROP_TITLE:
      g_value_set_string (value, private->title);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
unsoot_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  UnsootViewPrivate *private = PRIVATE (UNSOOT_VIEW (object));

  switch (id)
    {
    case PROP_SESSION:
      private
      ->session = g_value_dup_object (value);
      break;
    case PROP_RECORD:
      private
      ->record = g_value_get_int64 (value);
      break;
    case PROP_SLUG:
      private
      ->slug = g_value_dup_string (value);
      break;
    case PROP_CONTENT:
      g_set_object (&private->content, g_value_get_object (value));
      break;
    case PROP_TITLE:
      unsoot_view_set_title (UNSOOT_VIEW (object), g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
unsoot_view_dispose (GObject *object)
{
  UnsootView *self = UNSOOT_VIEW (object);
  UnsootViewPrivate *private = PRIVATE (self);

  private->gone = TRUE;
  stop_spinner (self);
  unsoot_store_slot_clear (&private->slot);
  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&private->content);
  G_OBJECT_CLASS (unsoot_view_parent_class)->dispose (object);
}

static void
unsoot_view_finalize (GObject *object)
{
  UnsootViewPrivate *private = PRIVATE (UNSOOT_VIEW (object));

  g_clear_object (&private->session);
  g_clear_pointer (&private->title, g_free);
  g_clear_pointer (&private->slug, g_free);
  G_OBJECT_CLASS (unsoot_view_parent_class)->finalize (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags once = G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;
  const GParamFlags often = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  properties[PROP_SESSION] = g_param_spec_object ("session", NULL, NULL, UNSOOT_TYPE_SESSION, once);
  properties[PROP_RECORD] = g_param_spec_int64 ("record", NULL, NULL, 0, G_MAXINT64, 0, once);
  properties[PROP_SLUG] = g_param_spec_string ("slug", NULL, NULL, NULL, once);
  properties[PROP_CONTENT] = g_param_spec_object ("content", NULL, NULL, GTK_TYPE_WIDGET, often);
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, often);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
unsoot_view_class_init (UnsootViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->constructed = unsoot_view_constructed;
  object_class->get_property = unsoot_view_get_property;
  object_class->set_property = unsoot_view_set_property;
  object_class->dispose = unsoot_view_dispose;
  object_class->finalize = unsoot_view_finalize;
  widget_class->map = unsoot_view_map;
  widget_class->unmap = unsoot_view_unmap;
  install_properties (object_class);
  signals[SHOWN] = g_signal_new ("shown", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "view.reload", NULL, reload_action);
}

static void
unsoot_view_init (UnsootView *self)
{
}

UnsootSession *
unsoot_view_get_session (UnsootView *self)
{
  return PRIVATE (self)->session;
}

gint64
unsoot_view_get_record (UnsootView *self)
{
  return PRIVATE (self)->record;
}

const char *
unsoot_view_get_slug (UnsootView *self)
{
  return PRIVATE (self)->slug;
}

const char *
unsoot_view_get_title (UnsootView *self)
{
  return PRIVATE (self)->title;
}

void
unsoot_view_set_title (UnsootView *self, const char *title)
{
  UnsootViewPrivate *private = PRIVATE (self);

  if (g_strcmp0 (private->title, title) == 0)
    return;
  g_free (private->title);
  private->title = g_strdup (title);
  unsoot_access_name (GTK_WIDGET (self), title);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_TITLE]);
}

gboolean
unsoot_view_is_settled (UnsootView *self)
{
  return PRIVATE (self)->settled;
}
