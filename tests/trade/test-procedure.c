/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo's five procedures pass; each of these unsafe ones, a passing one with
 * a line or two changed, is refused by the right rule at the right step. */
#include "procedure-kit.h"

typedef struct
{
  const char *what; /* the danger, in words */
  const char *family;
  const char *edits;
  const char *rule;
  const char *step; /* where it is refused */
} Unsafe;

static const Unsafe unsafe[] = {
  /* 1. The two fluids never mix. */
  { "filled without a flush", BRINDLE, "-flush tank fuel", "fluids-apart", "fill tank fuel" },
  { "flushed without a drain", BRINDLE, "-drain tank fuel", "fluids-apart", "flush tank fuel" },
  { "fresh fluid topped up over another vehicle's return", BRINDLE,
    "-drain tank fuel\n-flush tank fuel", "fluids-apart", "fill tank fuel" },
  { "intake fluid into the fuel tank", BRINDLE, "fill tank fuel => fill tank fuel with intake",
    "fluids-apart", "fill tank fuel" },
  { "fuel fluid into the intake tank", BRINDLE, "fill tank intake => fill tank intake with fuel",
    "fluids-apart", "fill tank intake" },
  { "topped up over its own return", BRINDLE, ">stop pump => fill tank fuel share 0.1",
    "fluids-apart", "fill tank fuel#2" },
  { "run on whatever is in the fuel tank", BRINDLE,
    "-drain tank fuel\n-flush tank fuel\n-fill tank fuel", "fluids-apart", "start pump" },
  { "misted whatever is in the intake tank", BRINDLE,
    "-drain tank intake\n-flush tank intake\n-fill tank intake", "fluids-apart", "start atomiser" },
  { "run on fluid that is kept under a label", BRINDLE, ">fill tank fuel => hold tank fuel",
    "fluids-apart", "start pump" },
  { "topped up over labelled fluid", FENMOOR, ">hold tank intake => fill tank intake share 0.1",
    "fluids-apart", "fill tank intake#2" },
  { "return left in the fuel tank", SKELDER, "-hold tank fuel", "fluids-apart", "end" },
  { "rest left in the intake tank", HARROW, "-drain tank intake#2\n-flush tank intake#2",
    "fluids-apart", "end" },
  { "intake tank drained for the fuel tank", BRINDLE, "drain tank fuel => drain tank intake",
    "fluids-apart", "flush tank fuel" },

  /* 2. The engine runs whenever the atomiser is on. */
  { "mist before the engine runs", BRINDLE, "^start atomiser => start engine#2",
    "atomiser-needs-engine", "start atomiser" },
  { "mist into a stopped engine after the swap", BRINDLE, "-start engine#3",
    "atomiser-needs-engine", "start atomiser#2" },
  { "both sides, the fuel side ending first", HARROW,
    "<stop atomiser => run engine fuel share 1 minutes 12 low-level", "atomiser-needs-engine",
    "run engine fuel share 1" },
  { "both sides, fuel used up before the mist", HARROW,
    "run engine fuel share 0.4 => run engine fuel share 1 minutes 22 low-level",
    "atomiser-needs-engine", "start atomiser" },

  /* 3. Lines at rest, never high pressure, leak looks. */
  { "bypass parted with the key on", BRINDLE, "<part line bypass => start key", "lines-at-rest",
    "part line bypass" },
  { "line parted unbled", BRINDLE, "-bleed pressure", "lines-at-rest", "part line vehicle-supply" },
  { "key on and off between bleeding and parting", BRINDLE,
    ">bleed pressure => stop key\n>bleed pressure => start key", "lines-at-rest",
    "part line vehicle-supply" },
  { "line parted with the key on", BRINDLE, "<part line vehicle-supply => start key",
    "lines-at-rest", "part line vehicle-supply" },
  { "line parted under a running engine", TOLVER,
    "<part line vehicle-supply => start key\n<part line vehicle-supply => start engine",
    "lines-at-rest", "part line vehicle-supply" },
  { "machine's hose parted with its pump on", BRINDLE,
    "-stop pump\n-set pressure minimum\n-bleed pressure#2", "lines-at-rest",
    "part line machine-supply" },
  { "machine's hose parted under pressure", SKELDER, "-set pressure minimum\n-bleed pressure#2",
    "lines-at-rest", "part line machine-supply" },
  { "adapter swapped with the air still charged", BRINDLE,
    "<remove adapter \"valve adapter\" => set air 40 psi", "lines-at-rest",
    "remove adapter \"valve adapter\"" },
  { "adapter swapped with the air at zero but not bled", BRINDLE,
    "<remove adapter \"valve adapter\" => set air 40 psi\n"
    "<remove adapter \"valve adapter\" => set air minimum",
    "lines-at-rest", "remove adapter \"valve adapter\"" },
  { "adapter fitted with the engine running", FENMOOR,
    "^start key => fit adapter\n"
    "^start engine => fit adapter\n<start engine => fit guard screen at mouth",
    "lines-at-rest", "fit guard screen" },
  { "low point opened under a running engine", BRINDLE,
    "^drain low-point \"charge cooler\" => stop engine#2", "lines-at-rest",
    "drain low-point \"charge cooler\"" },
  { "lead pulled with the key on", BRINDLE, "<disconnect lead => start key", "lines-at-rest",
    "disconnect lead" },
  { "couplings off before the line is bled", TOLVER, "^remove adapter \"large => bleed pressure#2",
    "lines-at-rest", "remove adapter \"large couplings\"" },
  { "fuel filter changed unbled", TOLVER, "-bleed pressure", "lines-at-rest", "replace filter" },
  { "tool fitted with the key on", HARROW, "<fit tool => start key", "lines-at-rest", "fit tool" },
  { "intake opened under a running engine", FENMOOR,
    "<take-off part intake => start key\n<take-off part intake => start engine", "lines-at-rest",
    "take-off part intake" },
  { "soak in place with the engine running", BRINDLE,
    "<set air 40 psi => soak part \"egr cooler\" minutes 10", "lines-at-rest", "soak part" },
  { "high-pressure line opened", BRINDLE, "<join line bypass => part line high-pressure",
    "high-pressure", "part line high-pressure" },
  { "high-pressure line joined", SKELDER, "<start pump => join line high-pressure", "high-pressure",
    "join line high-pressure" },
  { "high-pressure line bled by hand", TOLVER, "prime line => prime line high-pressure",
    "high-pressure", "prime line high-pressure" },
  { "started without a leak look", BRINDLE, "-look leaks fuel", "leak-look", "start engine" },
  { "a leak look that a later pressure rise has outdated", TOLVER, "-look leaks fuel#2",
    "leak-look", "run engine fuel" },
  { "a look with the bypass still dead", BRINDLE, "^look leaks fuel => start key", "leak-look",
    "look leaks fuel" },
  { "a look before there is pressure", SKELDER, "^look leaks fuel => set pressure 5 psi",
    "leak-look", "look leaks fuel" },
  { "a look before the raise", SKELDER,
    "^look leaks fuel => set pressure 5 psi\n<look leaks fuel => set pressure 4 psi", "leak-look",
    "start engine" },
  { "a look with the pump off", SKELDER, "^look leaks fuel => start pump", "leak-look",
    "look leaks fuel" },
  { "own lines joined again and not looked at", BRINDLE, "-look leaks fuel#2", "leak-look",
    "start engine#2" },
  { "couplings fitted and not looked at", TOLVER,
    "^fit adapter fuel => look leaks fuel#2\n<fit adapter fuel => stop engine\n"
    "<fit adapter fuel => stop key\n<fit adapter fuel => stop pump\n"
    "<fit adapter fuel => set pressure minimum\n<fit adapter fuel => bleed pressure\n"
    "<look leaks fuel#2 => start pump\n<look leaks fuel#2 => set pressure 9 psi\n"
    "-look leaks fuel#2\n<run engine fuel => start key\n<run engine fuel => start engine",
    "leak-look", "start engine#2" },
  { "own lines not looked at, no lift pump", TOLVER, "-look leaks fuel#3", "leak-look",
    "start atomiser" },
  { "own lines looked at only after the start", SKELDER,
    "^look leaks fuel#2 => run engine minutes 3", "leak-look", "start engine#2" },
  { "mist without a look at the air hose", BRINDLE, "-look leaks intake", "leak-look",
    "start atomiser" },
  { "a look at an air hose without air", BRINDLE, "^look leaks intake => set air 40 psi",
    "leak-look", "look leaks intake" },
  { "air raised under mist and not looked at", HARROW, ">start atomiser => set air 42 psi",
    "leak-look", "run engine intake" },
  { "pump stopped and started between look and run", SKELDER,
    "<start key => stop pump\n<start key => set pressure minimum\n<start key => start pump\n"
    "<start key => set pressure 5 psi",
    "leak-look", "start engine" },
  { "pressure above the window", BRINDLE, "set pressure 8 psi => set pressure 11 psi", "window",
    "set pressure 11 psi" },
  { "pressure below the window", BRINDLE, "set pressure 8 psi => set pressure 5 psi", "window",
    "set pressure 5 psi" },
  { "a family without a window", BRINDLE, "window => window none", "window", "set pressure 8 psi" },
  { "too much air", BRINDLE, "set air 40 psi => set air 60 psi", "window", "set air 60 psi" },
  { "too little air", BRINDLE, "set air 40 psi => set air 20 psi", "window", "set air 20 psi" },
  { "no air at all", BRINDLE, "-set air 40 psi\n-look leaks intake", "window", "start atomiser" },
  { "started at minimum pressure", BRINDLE, "-set pressure 8 psi\n-look leaks fuel", "window",
    "start engine" },
  { "pressure taken away under a running engine", HARROW,
    "<run engine fuel => set pressure minimum", "window", "set pressure minimum" },
  { "pump started under set pressure", SKELDER,
    "-set pressure minimum\nbleed pressure#2 => start pump", "window", "start pump#2" },
  { "lift pump against parted lines", BRINDLE, "-join line bypass", "lift-pump", "start key" },
  { "lift pump not unplugged", SKELDER, "-disconnect lead lift-pump", "lift-pump", "start key" },
  { "bypass where the maker forbids it", SKELDER, "<join line machine-supply => join line bypass",
    "lift-pump", "join line bypass" },
  { "lift pump plugged in too early", SKELDER, "^reconnect lead lift-pump => start pump",
    "lift-pump", "start key" },
  { "key on with the return still off", HARROW, "-join line vehicle-return", "lift-pump",
    "start key#2" },

  /* 4. Whatever came off goes back on. */
  { "refitted on the old gasket", BRINDLE, "-replace gasket", "everything-back", "refit part" },
  { "a hose refitted over a guard", FENMOOR,
    "fit guard screen => fit guard screen at \"intake hose\"\n-remove guard screen",
    "everything-back", "refit part \"intake hose\"" },
  { "a hose refitted over its adapter", FENMOOR, "^refit part \"intake => remove adapter",
    "everything-back", "refit part \"intake hose\"" },
  { "a tool left on", HARROW, "-remove tool", "everything-back", "drive road" },
  { "a guard left on", FENMOOR, "-remove guard screen", "everything-back", "drive road" },
  { "an adapter left on", BRINDLE, "-remove adapter \"valve adapter\"#2", "everything-back",
    "drive road" },
  { "a cover left off", HARROW, "-refit part \"engine cover\"", "everything-back", "drive road" },
  { "the heater left disabled", BRINDLE, "-enable heater", "everything-back", "drive road" },
  { "regeneration left disabled", HARROW, "-enable regeneration", "everything-back", "drive road" },
  { "a lead left off", BRINDLE, "-reconnect lead\n-clear codes", "everything-back", "drive road" },
  { "a valve left open", FENMOOR, "-close valve", "everything-back", "drive road" },
  { "codes not cleared", SKELDER, "-clear codes", "everything-back", "end" },
  { "a cap left in the intake", FENMOOR, "-remove guard \"hose cap\"", "air-path", "start engine" },
  { "started with the intake open", FENMOOR, "-fit adapter\n-fit guard screen", "air-path",
    "start engine" },
  { "mist without an adapter", HARROW, "-take-off part intake\n-fit adapter", "air-path",
    "start atomiser" },
  { "part off and its adapter elsewhere", BRINDLE,
    "fit adapter => fit adapter intake \"valve adapter\" at elsewhere", "air-path",
    "start engine" },

  /* 5. The order of stopping. */
  { "pump stopped before the engine", BRINDLE, "^stop pump => stop engine", "stop-order",
    "stop pump" },
  { "engine stopped under mist", HARROW, "^stop engine => stop atomiser", "stop-order",
    "stop engine" },
  { "air off before the atomiser", BRINDLE, "-stop atomiser", "stop-order", "set air minimum" },
  { "engine stopped with the air charged", BRINDLE, "-set air minimum\n-bleed air", "stop-order",
    "stop engine#2" },
  { "engine stopped with the air not bled", BRINDLE, "-bleed air", "stop-order", "stop engine#2" },
  { "air bled while it is on", BRINDLE, "-set air minimum", "stop-order", "bleed air" },
  { "key off under a running engine", BRINDLE, "^stop key => stop engine", "stop-order",
    "stop key" },
  { "fuel bled under a running pump", BRINDLE, "^bleed pressure#2 => stop pump", "stop-order",
    "bleed pressure#2" },
  { "fuel bled at pressure", BRINDLE, "-set pressure minimum", "stop-order", "bleed pressure#2" },
  { "tank drained while the pump draws", BRINDLE, "<set pressure 8 psi => drain tank fuel",
    "stop-order", "drain tank fuel#2" },
  { "tank kept while the atomiser draws", FENMOOR, "<stop atomiser => hold tank intake",
    "stop-order", "hold tank intake" },
  { "left with the engine running", SKELDER, "-stop engine#2\n-stop key#2", "stop-order", "end" },
  { "left with the key on", SKELDER, "-stop key#2", "stop-order", "end" },
  { "started on a pump that is not primed", BRINDLE, "-prime pump", "fuel-supply", "start engine" },
  { "primed, then parted and joined", SKELDER,
    "^prime pump => set pressure 5 psi\n<set pressure 5 psi => stop pump\n"
    "<set pressure 5 psi => bleed pressure\n<set pressure 5 psi => part line machine-supply\n"
    "<set pressure 5 psi => join line machine-supply\n<set pressure 5 psi => start pump",
    "fuel-supply", "start engine" },
  { "pump on with one hose", BRINDLE, "-join line machine-return", "fuel-supply", "start pump" },
  { "engine without any line", TOLVER, "-join line vehicle-return", "fuel-supply",
    "start engine#2" },
  { "engine with its lift pump unplugged", SKELDER,
    "-reconnect lead\n-look leaks fuel#2\n-clear codes", "fuel-supply", "start engine#2" },
  { "pump on with a fuel part off", TOLVER, "<start pump => take-off part fuel \"water separator\"",
    "fuel-supply", "start pump" },
  { "cleaner run on the vehicle's own lines", TOLVER,
    "<set air 40 psi => run engine fuel share 1 minutes 5 low-level", "fuel-supply",
    "run engine fuel#2" },
  { "run that watches no low level", BRINDLE,
    "run engine fuel => run engine fuel share 0.95 minutes 22", "tank-runs-dry",
    "run engine fuel" },
  { "run without a time", BRINDLE, "run engine fuel => run engine fuel share 0.95 low-level",
    "tank-runs-dry", "run engine fuel" },
  { "run without a volume", BRINDLE, "run engine fuel => run engine fuel minutes 22 low-level",
    "tank-runs-dry", "run engine fuel" },
  { "mist on the machine's fuel, its level not watched", HARROW,
    "run engine intake share 0.5 => run engine intake share 0.5 minutes 8", "tank-runs-dry",
    "run engine intake share 0.5" },
  { "half a dose for a whole run", BRINDLE, "fill tank fuel => fill tank fuel share 0.5",
    "tank-runs-dry", "run engine fuel" },
  { "half a dose of mist for all of it", HARROW, "-fill tank intake share 0.5", "tank-runs-dry",
    "run engine intake share 1" },
  { "empty fuel tank", BRINDLE, "-fill tank fuel", "tank-runs-dry", "start pump" },
  { "empty intake tank", BRINDLE, "-fill tank intake", "tank-runs-dry", "start atomiser" },
  { "a family without a dose", SKELDER, "-dose fuel", "tank-runs-dry", "fill tank fuel" },
  { "run on after the dose is used", HARROW,
    ">run engine fuel share 1 => run engine minutes 2 low-level", "tank-runs-dry",
    "run engine minutes 2" },
  { "pump started again on an empty tank", HARROW, "<part line machine-return => start pump",
    "tank-runs-dry", "start pump#2" },

  /* 6. After the intake side. */
  { "started on an undrained charge cooler", BRINDLE, "-drain low-point \"charge cooler\"",
    "drain-before-start", "start engine#3" },
  { "started with one low pipe forgotten", BRINDLE, "-drain low-point \"left low pipe\"#2",
    "drain-before-start", "start engine#4" },
  { "drained before the mist instead of after", FENMOOR, "^drain low-point => start key",
    "drain-before-start", "start engine#2" },
  { "started with the oil unread", BRINDLE, "-measure oil#2", "drain-before-start",
    "start engine#3" },
  { "a soak in place, then start", BRINDLE, "<start key#2 => soak part \"egr cooler\" minutes 30",
    "drain-before-start", "start engine#2" },
  { "raised without an idle", BRINDLE, "-run engine minutes 5 until-clear", "idle-first",
    "set speed raised" },
  { "raised under mist", HARROW, ">start atomiser => set speed raised", "idle-first",
    "set speed raised" },
  { "mist into a raised engine", FENMOOR, "<set air 40 psi => set speed raised", "idle-first",
    "start atomiser" },
  { "raised to blow it out, undrained", FENMOOR, "<set air minimum => set speed raised",
    "idle-first", "set speed raised" },
  { "an idle before the drain doesn't count", FENMOOR,
    "^run engine minutes 5 until-clear => set air minimum", "idle-first", "set speed raised" },
  { "low points never drained, never started", FENMOOR,
    "-drain low-point\n-start engine#2\n-run engine minutes 5\n-set speed raised\n"
    "-run engine minutes 2\n-set speed idle\n-drive road\n-stop engine#2",
    "drain-before-start", "end" },

  /* 7. Ignition sources out. */
  { "mist with the heater live", BRINDLE, "-disable heater", "ignition-out", "start atomiser" },
  { "mist with regeneration live", HARROW, "-disable regeneration", "ignition-out",
    "start atomiser" },
  { "heater enabled at the swap", BRINDLE, "<remove adapter \"valve adapter\" => enable heater",
    "ignition-out", "start atomiser#2" },
  { "heater enabled under mist", BRINDLE, "<stop atomiser => enable heater", "ignition-out",
    "enable heater" },

  /* 8. The road test ends the job. */
  { "no road test", BRINDLE, "-drive road", "road-test-last", "end" },
  { "no run under load", TOLVER, "-drive load", "road-test-last", "end" },
  { "a road test for a machine without a road", TOLVER, "drive load => drive road",
    "road-test-last", "drive road" },
  { "a load for a vehicle with a road", BRINDLE, "drive road => drive load", "road-test-last",
    "drive load" },
  { "road test before the raise", BRINDLE, "^drive road => set speed raised", "road-test-last",
    "drive road" },
  { "loaded while it runs on the machine", TOLVER,
    "-disable heater\n-fit adapter fuel\n>run engine fuel => drive load", "everything-back",
    "drive load" },
  { "something touched after the road test", FENMOOR,
    "<measure tank intake => take-off part \"air duct\"\n"
    "<measure tank intake => refit part \"air duct\"",
    "road-test-last", "end" },

  /* Steps that make no sense where things stand. */
  { "taken off twice", BRINDLE, "<fit adapter => take-off part intake \"egr crossover\"", "sense",
    "take-off part intake \"egr crossover\"#2" },
  { "refitted though it never came off", FENMOOR, "-take-off part \"air duct\"", "sense",
    "refit part \"air duct\"" },
  { "stopped twice", BRINDLE, ">stop pump => stop pump", "sense", "stop pump#2" },
  { "two lines on one connection", BRINDLE, "-part line vehicle-return", "sense",
    "join line bypass" },
  { "a bypass without a lift pump", TOLVER, "<join line machine-supply => join line bypass",
    "sense", "join line bypass" },
  { "codes cleared with the lead still off", BRINDLE, "-reconnect lead", "sense", "clear codes" },
  { "the same share run twice", HARROW,
    ">run engine fuel share 0.4 => run engine fuel share 0.4 minutes 5 low-level", "sense",
    "run engine fuel share 0.4#2" },
  { "a side that is sold and not done", FENMOOR, "sides intake => sides fuel intake", "sense",
    "end" },
  { "a low point that the family doesn't have", FENMOOR, "drain low-point => drain low-point sump",
    "sense", "drain low-point sump" },
  { "a part without a name", FENMOOR, "take-off part \"air duct\" => take-off part", "sense",
    "take-off part" },
  { "a filter without a name", TOLVER, "replace filter => replace filter fuel", "sense",
    "replace filter fuel" },
  { "a soak of nothing", FENMOOR, "soak part => soak part minutes 10", "sense", "soak part" },
  { "a soak without a time", FENMOOR, "soak part => soak part \"throttle plug\"", "sense",
    "soak part" },
  { "a reading of nothing", FENMOOR, "measure reading => measure reading", "sense",
    "measure reading" },
  { "a line that nobody knows", BRINDLE, "part line vehicle-return => part line coolant", "sense",
    "part line coolant" },
  { "priming a line that nobody knows", TOLVER, "prime line => prime line coolant", "sense",
    "prime line coolant" },
  { "a tank without a side", SKELDER, "drain tank fuel => drain tank", "sense", "drain tank" },
  { "a look without a side", SKELDER, "look leaks fuel => look leaks", "sense", "look leaks" },
  { "measuring a tank without a side", SKELDER, "measure tank => measure tank", "sense",
    "measure tank" },
  { "a speed that is neither", BRINDLE, "set speed idle => set speed flat-out", "sense",
    "set speed flat-out" },
  { "a pressure without a figure", BRINDLE, "set pressure 8 psi => set pressure", "sense",
    "set pressure" },
  { "a run that doesn't say when it ends", SKELDER, "run engine minutes 3 => run engine", "sense",
    "run engine#2" },
  { "a run for no side under mist", FENMOOR, "run engine intake share 0.5 => run engine minutes 5",
    "sense", "run engine" },
  { "an oil level read from a running engine", FENMOOR, "^measure oil#2 => stop engine", "sense",
    "measure oil#2" },
  { "codes cleared with the key off", SKELDER, "^clear codes => start key#2", "sense",
    "clear codes" },
  { "a lead that the family doesn't have", TOLVER, "<start key => disconnect lead lift-pump",
    "sense", "disconnect lead lift-pump" },
  { "a regeneration that the family doesn't have", FENMOOR,
    "disable heater => disable regeneration", "sense", "disable regeneration" },
  { "pump primed before it is on", SKELDER, "^prime pump => start pump", "sense", "prime pump" },
  { "a line primed that is parted", TOLVER, "^prime line => join line vehicle-supply", "sense",
    "prime line" },
  { "kept though nothing is in it", SKELDER, ">fill tank fuel => hold tank fuel\n-fill tank fuel",
    "sense", "hold tank fuel" },
  { "started without a key", SKELDER, "-start key", "sense", "start engine" },
  { "a gasket for a part that is on", BRINDLE, "replace gasket => replace gasket ring at throttle",
    "sense", "replace gasket" },
  { "a heater that the family doesn't have", HARROW, "<disable regeneration => disable heater",
    "sense", "disable heater" },
};

START_TEST (test_five_pass)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autoptr (GArray) faults = unsoot_faults_new ();

  kit_load (kit_names[_i], &procedure, &facts);
  ck_assert_msg (unsoot_procedure_check (procedure, facts, faults), "%s: %s", kit_names[_i],
                 faults->len > 0 ? g_array_index (faults, UnsootFault, 0).reason : "");
  ck_assert_uint_eq (faults->len, 0);
  ck_assert (procedure->phases->len >= 3 && procedure->phases->len <= 6);
}
END_TEST

/* Gloves and arm's length: 60 characters at most. Our own limit. */
START_TEST (test_wording_is_short)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;

  kit_load (kit_names[_i], &procedure, &facts);
  for (guint i = 0; i < procedure->steps->len; i++)
    {
      const UnsootStep *step = procedure->steps->pdata[i];
      ck_assert_ptr_nonnull (step->wording);
      ck_assert_int_le (g_utf8_strlen (step->wording, -1), 60);
    }
}
END_TEST

START_TEST (test_unsafe_is_refused)
{
  const Unsafe *c = &unsafe[_i];
  g_autofree char *text = kit_edited (c->family, c->edits);
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autoptr (GArray) faults = unsoot_faults_new ();
  const UnsootFault *fault;

  kit_parse (text, &procedure, &facts);
  ck_assert_msg (!unsoot_procedure_check (procedure, facts, faults), "accepted: %s", c->what);
  ck_assert_uint_gt (faults->len, 0);
  fault = &g_array_index (faults, UnsootFault, 0);
  ck_assert_msg (g_str_equal (unsoot_rule_to_slug (fault->rule), c->rule),
                 "%s: by %s at step %d (%s), not by %s", c->what, unsoot_rule_to_slug (fault->rule),
                 fault->step, fault->reason, c->rule);
  ck_assert_msg (fault->step == kit_step_index (procedure, c->step),
                 "%s: at step %d (%s), not at “%s”", c->what, fault->step, fault->reason, c->step);
  ck_assert (g_str_has_suffix (fault->reason, "."));
}
END_TEST

/* Every rule of the table's kind is met at least once. */
START_TEST (test_every_rule_is_met)
{
  for (int rule = UNSOOT_RULE_NONE + 1; rule < UNSOOT_RULES; rule++)
    {
      const char *slug = unsoot_rule_to_slug ((UnsootRule) rule);
      gboolean met = FALSE;
      for (guint i = 0; i < G_N_ELEMENTS (unsafe); i++)
        met |= g_str_equal (unsafe[i].rule, slug);
      ck_assert_msg (met, "no case is refused by %s", slug);
    }
  ck_assert_uint_ge (G_N_ELEMENTS (unsafe), 60);
}
END_TEST

/* All of a procedure's refusals are told, and a NULL list is allowed. */
START_TEST (test_all_faults)
{
  g_autofree char *text = kit_edited (BRINDLE, "-flush tank fuel\n-disable heater");
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autoptr (GArray) faults = unsoot_faults_new ();
  gboolean ignition = FALSE;

  kit_parse (text, &procedure, &facts);
  ck_assert (!unsoot_procedure_check (procedure, facts, NULL));
  ck_assert (!unsoot_procedure_check (procedure, facts, faults));
  for (guint i = 0; i < faults->len; i++)
    ignition |= g_array_index (faults, UnsootFault, i).rule == UNSOOT_RULE_IGNITION_OUT;
  ck_assert (ignition);
}
END_TEST

START_TEST (test_copy_and_compare)
{
  g_autoptr (UnsootProcedure) procedure = NULL, copy = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL, same = NULL;

  kit_load (BRINDLE, &procedure, &facts);
  copy = unsoot_procedure_copy (procedure);
  same = unsoot_family_facts_copy (facts);
  ck_assert (unsoot_procedure_equal (procedure, copy));
  ck_assert (unsoot_family_facts_equal (facts, same));
  ((UnsootStep *) copy->steps->pdata[3])->minutes = 4;
  ck_assert (!unsoot_procedure_equal (procedure, copy));
  unsoot_family_facts_add_low_point (same, "elbow");
  ck_assert (!unsoot_family_facts_equal (facts, same));
}
END_TEST

static Suite *
procedure_suite (void)
{
  Suite *suite = suite_create ("procedure");
  TCase *tcase = tcase_create ("check");

  tcase_add_loop_test (tcase, test_five_pass, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_wording_is_short, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_unsafe_is_refused, 0, G_N_ELEMENTS (unsafe));
  tcase_add_test (tcase, test_every_rule_is_met);
  tcase_add_test (tcase, test_all_faults);
  tcase_add_test (tcase, test_copy_and_compare);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (procedure_suite)
