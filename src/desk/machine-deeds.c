/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-deeds.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "deed-dialog.h"
#include "rig.h"
#include "side.h"

/* The record of a tank's deed is the tank: its machine and side are found from there. */
static gboolean
post (UnsootDb *db, const UnsootActing *who, const UnsootDeedOrder *order, const char *kind,
      gint64 ml, const char *contents, const char *label, GError **error)
{
  g_autoptr (UnsootTankRow) tank
      = unsoot_rows_get (db, &unsoot_tank_row_type, order->record, error);

  return tank != NULL
         && unsoot_tank_post (db, who, tank->machine_id, tank->side, kind, ml, contents, label,
                              error)
                != 0;
}

static gboolean
drain (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return post (db, who, order, "drain", 0, NULL, NULL, error);
}

static gboolean
flush (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return post (db, who, order, "flush", 0, NULL, NULL, error);
}

static gboolean
hold (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return post (db, who, order, "hold", order->values[1].number, NULL, order->values[0].text, error);
}

/* In the order of the choices: nobody claims to know by not choosing. */
static const UnsootContents found_contents[]
    = { UNSOOT_CONTENTS_UNKNOWN, UNSOOT_CONTENTS_EMPTY,    UNSOOT_CONTENTS_CLEAN,
        UNSOOT_CONTENTS_FRESH,   UNSOOT_CONTENTS_RETURNED, UNSOOT_CONTENTS_HELD };

static gboolean
found (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return post (db, who, order, "found", order->values[1].number,
               unsoot_contents_to_slug ((UnsootContents) order->values[0].number), NULL, error);
}

static gboolean
correct (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_tank_correct (db, who, order->record, order->values[0].text, error) != 0;
}

static gboolean
check_gauge (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootGaugeCheckRow) check = unsoot_gauge_check_row_new ();

  check->machine_id = order->record;
  check->gauge = g_strdup (order->values[0].text);
  check->reads_pa = order->values[1].real;
  check->reference_pa = order->values[2].real;
  check->passed = order->values[3].number == 0;
  check->next_on = g_strdup (unsoot_deed_text (order, 4));
  return unsoot_gauge_check_post (db, who, check, error);
}

static gboolean
change_hoses (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_machine_hoses (db, who, order->record, unsoot_deed_text (order, 0), error);
}

static const char *const passed_words[] = { N_ ("Passed"), N_ ("Did not pass"), NULL };

static const UnsootDeedForm tank_forms[UNSOOT_TANK_DEEDS] = {
  [UNSOOT_TANK_DRAIN] = { .slug = "drain",
                          .title = N_ ("Drain a tank"),
                          .verb = N_ ("Drain"),
                          .done = N_ ("Drained"),
                          .deed = UNSOOT_DEED_TEND_TANK,
                          .carry_out = drain },
  [UNSOOT_TANK_FLUSH] = { .slug = "flush",
                          .title = N_ ("Flush a tank"),
                          .verb = N_ ("Flush"),
                          .done = N_ ("Flushed"),
                          .deed = UNSOOT_DEED_TEND_TANK,
                          .carry_out = flush },
  [UNSOOT_TANK_HOLD] = { .slug = "hold",
                         .title = N_ ("Keep what is in a tank"),
                         .verb = N_ ("Keep"),
                         .done = N_ ("Kept, with its label"),
                         .deed = UNSOOT_DEED_TEND_TANK,
                         .n_fields = 2,
                         .fields = { { .label = N_ ("What the label says"),
                                       .kind = UNSOOT_ASK_TEXT,
                                       .hint = N_ ("For which vehicle, since when") },
                                     { .label = N_ ("Measured"),
                                       .kind = UNSOOT_ASK_VOLUME,
                                       .optional = TRUE,
                                       .hint = N_ ("0.4 L; left out, it is what the book says") } },
                         .carry_out = hold },
  [UNSOOT_TANK_FOUND]
  = { .slug = "found",
      .title = N_ ("Record what is in a tank"),
      .verb = N_ ("Record"),
      .done = N_ ("Recorded as found"),
      .deed = UNSOOT_DEED_TEND_TANK,
      .n_fields = 2,
      .fields = { { .label = N_ ("It is"),
                    .kind = UNSOOT_ASK_CHOICE,
                    .hint = N_ ("Any doubt: unknown. It is then drained and flushed before use.") },
                  { .label = N_ ("Measured"),
                    .kind = UNSOOT_ASK_VOLUME,
                    .hint = N_ ("0.4 L; 0 where nothing is in it") } },
      .carry_out = found },
};

static const UnsootDeedForm correct_form
    = { .slug = "tank-correct",
        .title = N_ ("Take back what was recorded"),
        .verb = N_ ("Take back"),
        .done = N_ ("Taken back by a counter-posting; both stay in the book"),
        .deed = UNSOOT_DEED_TEND_TANK,
        .n_fields = 1,
        .fields = { { .label = N_ ("Why"),
                      .kind = UNSOOT_ASK_TEXT,
                      .hint = N_ ("Wrong tank, wrong machine … Only what was recorded by mistake: "
                                  "what was done can't be undone here") } },
        .carry_out = correct };

static const UnsootDeedForm gauge_form
    = { .slug = "gauge",
        .title = N_ ("Check a gauge"),
        .verb = N_ ("Record"),
        .done = N_ ("Gauge check recorded"),
        .deed = UNSOOT_DEED_CHECK_MACHINE,
        .n_fields = 5,
        .fields = { { .label = N_ ("Gauge"), .kind = UNSOOT_ASK_TEXT },
                    { .label = N_ ("It reads"),
                      .kind = UNSOOT_ASK_PRESSURE,
                      .hint = N_ ("8 psi, 55 kPa; psi where no unit is typed") },
                    { .label = N_ ("The reference reads"), .kind = UNSOOT_ASK_PRESSURE },
                    { .label = N_ ("It"), .kind = UNSOOT_ASK_CHOICE, .words = passed_words },
                    { .label = N_ ("Next check"),
                      .kind = UNSOOT_ASK_DAY,
                      .optional = TRUE,
                      .hint = N_ ("2027-03-31") } },
        .carry_out = check_gauge };

static const UnsootDeedForm hoses_form
    = { .slug = "hoses",
        .title = N_ ("Hoses replaced"),
        .verb = N_ ("Record"),
        .done = N_ ("New hoses recorded"),
        .deed = UNSOOT_DEED_CHECK_MACHINE,
        .n_fields = 1,
        .fields = { { .label = N_ ("The next are due"),
                      .kind = UNSOOT_ASK_DAY,
                      .optional = TRUE,
                      .hint = N_ ("As the hoses' maker says: 2027-03-31") } },
        .carry_out = change_hoses };

GtkWidget *
unsoot_tank_deed_button_new (UnsootTankDeed deed, UnsootSession *session, const char *side)
{
  static const char *const labels[UNSOOT_TANK_DEEDS]
      = { N_ ("Drain…"), N_ ("Flush…"), N_ ("Keep…"), N_ ("Found…") };

  return unsoot_deed_button_new (session, UNSOOT_DEED_TEND_TANK, _ (labels[deed]), side);
}

/* What goes where is said before it is done: it can't be undone. */
static const char *
warning (UnsootTankDeed deed)
{
  switch (deed)
    {
    case UNSOOT_TANK_DRAIN:
      return _ ("What comes out is never fresh fluid again: into its waste container, by local "
                "rules. Eye and skin protection on.");
    case UNSOOT_TANK_FLUSH:
      return _ ("Only an empty tank is flushed, with what its maker names. Into the waste, by "
                "local rules.");
    case UNSOOT_TANK_HOLD:
      return _ ("It stays in the tank for the same vehicle, and nothing else goes in.");
    case UNSOOT_TANK_FOUND:
      return _ ("Measure it; the two fluids never mix.");
    }
  g_return_val_if_reached ("");
}

void
unsoot_tank_deed_open (UnsootTankDeed deed, GtkWidget *over, UnsootSession *session,
                       const UnsootMachineRow *machine, const UnsootTankState *tank)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (over, session, &tank_forms[deed], tank->tank->id);
  UnsootSide side = UNSOOT_SIDE_NONE;
  g_autofree char *about = NULL;

  unsoot_side_from_slug (tank->tank->side, &side);
  /* Translators: a machine, a side of the engine, what is in its tank; then a warning */
  about = g_strdup_printf (_ ("%s, %s: %s.\n%s"), machine->name, unsoot_side_label (side),
                           tank->words, warning (deed));
  unsoot_deed_dialog_say (dialog, about);
  if (deed == UNSOOT_TANK_FOUND)
    for (gsize i = 0; i < G_N_ELEMENTS (found_contents); i++)
      unsoot_deed_dialog_add_choice (dialog, 0, (gint64) found_contents[i],
                                     unsoot_contents_label (found_contents[i]));
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_gauge_check_open (GtkWidget *over, UnsootSession *session, const UnsootMachineRow *machine,
                         const char *gauge)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &gauge_form, machine->id);

  unsoot_deed_dialog_say (dialog, machine->name);
  unsoot_deed_dialog_set_text (dialog, 0, gauge);
  unsoot_deed_dialog_set_part (dialog, gauge);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_tank_correct_open (GtkWidget *over, UnsootSession *session, gint64 event_id,
                          const char *what)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &correct_form, event_id);

  unsoot_deed_dialog_say (dialog, what);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_hoses_open (GtkWidget *over, UnsootSession *session, const UnsootMachineRow *machine)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &hoses_form, machine->id);

  unsoot_deed_dialog_say (dialog, machine->name);
  unsoot_deed_dialog_open (dialog);
}
