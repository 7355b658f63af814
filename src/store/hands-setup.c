/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>

#include "bill.h"

/* What a new shop still lacks: each line goes once the thing is there. */

typedef struct
{
  UnsootSetup part;
  const char *sql; /* how many there are */
  const char *thing;
  const char *rest;
  const char *verb;
} Need;

/* In the order in which they are best entered. */
static const Need needs[] = {
  { UNSOOT_SETUP_HOURS, "SELECT count (*) FROM open_hours", N_ ("Opening hours"),
    N_ ("are not entered: no day has a free time before"), N_ ("Enter") },
  { UNSOOT_SETUP_BAYS, "SELECT count (*) FROM bays WHERE active = 1", N_ ("A bay"),
    N_ ("is needed to work in"), N_ ("Add") },
  { UNSOOT_SETUP_STAFF,
    "SELECT count (*) FROM staff WHERE active = 1 AND role IN ('technician', 'lead')",
    N_ ("A technician"), N_ ("is needed: nobody is there yet to book work for"), N_ ("Add") },
  { UNSOOT_SETUP_TAXES, "SELECT count (*) / 5 FROM tax_rules", N_ ("Tax"),
    N_ ("is not settled: no price can be reckoned before, even where there is none"),
    N_ ("Settle") },
  { UNSOOT_SETUP_SERVICES, "SELECT count (*) FROM services WHERE active = 1", N_ ("A service"),
    N_ ("with its price is needed before anything can be quoted"), N_ ("Add") },
  { UNSOOT_SETUP_MACHINES, "SELECT count (*) FROM machines WHERE active = 1", N_ ("A machine"),
    N_ ("with its two tanks is needed for every job"), N_ ("Add") },
  { UNSOOT_SETUP_FAMILIES, "SELECT count (*) FROM families", N_ ("An engine family"),
    N_ ("with its pressure window is needed before anything can be run"), N_ ("Add") },
};

G_STATIC_ASSERT (UNSOOT_BILL_KINDS == 5);

static void
tell (UnsootHandRound *round, UnsootSetup part, const char *thing, const char *rest,
      const char *verb)
{
  unsoot_hand_add (round, UNSOOT_HAND_SETUP, -(gint64) round->hands->len, UNSOOT_TARGET_PREFERENCES,
                   part, verb, g_strdup (thing), g_strdup (rest));
}

static gboolean
tell_needs (UnsootHandRound *round, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (needs); i++)
    {
      gint64 n = 0;
      if (!unsoot_db_int (round->db, &n, error, needs[i].sql))
        return FALSE;
      if (n == 0)
        tell (round, needs[i].part, _ (needs[i].thing), _ (needs[i].rest), _ (needs[i].verb));
    }
  return TRUE;
}

/* A side that is sold and has no fluid; before anything is sold, both. */
static gboolean
lacks_fluid (UnsootHandRound *round, const char *side, gboolean *lacks, GError **error)
{
  gint64 fluids = 0, sold = 0, services = 0;

  if (!unsoot_db_int (round->db, &fluids, error,
                      "SELECT count (*) FROM fluids WHERE active = 1 AND side = $1",
                      unsoot_text (side))
      || !unsoot_db_int (
          round->db, &sold, error,
          "SELECT count (*) FROM services WHERE active = 1 AND sides IN ($1, 'both')",
          unsoot_text (side))
      || !unsoot_db_int (round->db, &services, error,
                         "SELECT count (*) FROM services WHERE active = 1"))
    return FALSE;
  *lacks = fluids == 0 && (sold > 0 || services == 0);
  return TRUE;
}

static gboolean
tell_fluids (UnsootHandRound *round, GError **error)
{
  gboolean fuel, intake;

  if (!lacks_fluid (round, "fuel", &fuel, error) || !lacks_fluid (round, "intake", &intake, error))
    return FALSE;
  if (fuel)
    tell (round, UNSOOT_SETUP_FLUIDS, _ ("A fluid for the fuel side"),
          _ ("is needed, with its price for a litre"), _ ("Add"));
  if (intake)
    tell (round, UNSOOT_SETUP_FLUIDS, _ ("A fluid for the intake side"),
          _ ("is needed, with its price for a litre"), _ ("Add"));
  return TRUE;
}

static gboolean
tell_procedure (UnsootHandRound *round, GError **error)
{
  gint64 families = 0, procedures = 0;

  if (!unsoot_db_int (round->db, &families, error, "SELECT count (*) FROM families")
      || !unsoot_db_int (round->db, &procedures, error,
                         "SELECT count (*) FROM procedures WHERE state = 'in-use'"))
    return FALSE;
  if (families > 0 && procedures == 0)
    tell (round, UNSOOT_SETUP_FAMILIES, _ ("A procedure"),
          _ ("is needed: no engine family has one, so nothing can be run"), _ ("Write"));
  return TRUE;
}

gboolean
unsoot_hands_setup (UnsootHandRound *round, GError **error)
{
  return tell_needs (round, error) && tell_fluids (round, error) && tell_procedure (round, error);
}
