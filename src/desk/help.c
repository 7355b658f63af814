/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "help.h"

#include <glib/gi18n-lib.h>

#include "desk-place.h"

struct _UnsootHelp
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *heading;
  GtkLabel *words;
};

G_DEFINE_FINAL_TYPE (UnsootHelp, unsoot_help, ADW_TYPE_WINDOW)

typedef struct
{
  const char *slug;
  const char *words; /* N_ () */
} Page;

static const Page pages[] = {
  { "today",
    N_ ("The strip is the day: a lane for each bay, a block for each job, a line for now. A block "
        "opens its job. Below it stands what needs a hand, what hurts first at the top, each with "
        "the button that does the next thing.") },
  { "planner",
    N_ ("Drag a block to move it, or its end to stretch it. By keyboard, Ctrl with Left or Right "
        "moves the block you are on and Shift with it stretches it; Enter keeps what is held, "
        "Escape lets it be. What a move would break is said while you hold it.") },
  { "bays", N_ ("What runs in which bay, and who waits. The button leads to the machine.") },
  { "bay",
    N_ ("One step at a time: do it, enter what it asks for, then press the button. STOP, or F8, "
        "asks nothing: it shows at once what to do and is recorded afterwards. A step that was "
        "done earlier is stamped late, unless it depends on the moment. A lot can be scanned at "
        "any time.") },
  { "jobs",
    N_ ("Every job from its estimate to its last payment, the newest at the top. The chooser "
        "leaves only those that stand where you say.") },
  { "job",
    N_ ("The path says where the job stands. The button beside it is the next deed, the menu "
        "holds the others. Estimate, work order, report and invoice stand under Papers, and "
        "Ctrl+P prints the last that the job has come to.") },
  { "booking",
    N_ ("Type part of a name, a phone, a plate, a unit or a VIN. Ctrl+Enter does the next deed: "
        "the estimate, the customer’s word, the booking. The reasons stand beside every dose and "
        "price. What you typed is here again when you come back.") },
  { "customers", N_ ("Everyone whose vehicles are cleaned here. Enter opens the one you are on.") },
  { "customer",
    N_ ("How a customer is reached, what they owe by age, their vehicles and their jobs.") },
  { "vehicles", N_ ("Every vehicle that the shop has seen. Enter opens the one you are on.") },
  { "vehicle",
    N_ ("The life of a vehicle: its meter over time, services as marks, and when the next one is "
        "due. Below it stand its jobs and what was read before and after.") },
  { "fluids",
    N_ ("What is on hand, promised and free, how many days that lasts against how long a delivery "
        "takes, and which lot goes off next. What falls short, and for which job, is said.") },
  { "fluid",
    N_ ("The stock as it was and as it will be; its lots, its moves and what jobs used beside the "
        "dose. Moves are never changed: a wrong one is taken back by another.") },
  { "lot", N_ ("One making of a fluid: what is left of it, its opened containers, its moves.") },
  { "adapters",
    N_ ("Each tag in its bin: here, on a job, lent, overdue or under inspection. A tag opens the "
        "adapter.") },
  { "adapter", N_ ("Where it is, what it fits, who had it, and when it is looked at again.") },
  { "kits", N_ ("Gaskets, O-rings and filters that each engine family needs.") },
  { "machines",
    N_ ("What is in each tank, and which gauges and hoses are due. Any doubt: drain, flush and "
        "record it.") },
  { "machine", N_ ("A cart with its two tanks, its gauge checks and its hoses.") },
  { "invoices",
    N_ ("What is open and how old it is. Numbers have no gaps; what was wrong is taken back by a "
        "credit note.") },
  { "invoice",
    N_ ("Take a payment, whole or in part, or issue a credit note over single lines. Ctrl+P prints "
        "it.") },
  { "preferences",
    N_ ("The shop’s details, hours, bays, services, prices, doses, taxes and people. What you may "
        "not change is only shown.") },
};

static void
shortcuts_cb (UnsootHelp *self)
{
  g_autoptr (GtkWindow) over = gtk_window_get_transient_for (GTK_WINDOW (self));

  g_object_ref (over);
  gtk_window_close (GTK_WINDOW (self));
  gtk_widget_activate_action (GTK_WIDGET (over), "win.shortcuts", NULL);
}

static void
unsoot_help_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_help_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_HELP);
}

static void
unsoot_help_class_init (UnsootHelpClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_help_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/help.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootHelp, heading);
  gtk_widget_class_bind_template_child (widget_class, UnsootHelp, words);
  gtk_widget_class_bind_template_callback (widget_class, shortcuts_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
unsoot_help_init (UnsootHelp *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

const char *
unsoot_help_words (const char *slug)
{
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_strcmp0 (pages[i].slug, slug) == 0)
      return _ (pages[i].words);
  return NULL;
}

/* A booking for somebody is a booking; what else has no page has that of its place. */
static const char *
words_for (const UnsootDeskPlace *place)
{
  const char *words = unsoot_help_words (place->slug);

  if (words == NULL && g_str_has_prefix (place->slug, "booking"))
    words = unsoot_help_words ("booking");
  if (words == NULL && place->under != NULL)
    words = unsoot_help_words (place->under);
  return words;
}

void
unsoot_help_open (GtkWindow *over, UnsootView *view)
{
  UnsootHelp *self = g_object_new (UNSOOT_TYPE_HELP, "transient-for", over, NULL);
  const UnsootDeskPlace *place
      = view != NULL ? unsoot_desk_place_find (unsoot_view_get_slug (view)) : NULL;
  const char *words = place != NULL ? words_for (place) : NULL;

  if (place != NULL && unsoot_view_get_title (view) != NULL)
    gtk_label_set_text (self->heading, unsoot_view_get_title (view));
  gtk_label_set_text (self->words, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->words), words != NULL);
  gtk_window_present (GTK_WINDOW (self));
}
