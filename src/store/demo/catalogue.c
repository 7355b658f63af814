/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue.h"

const UnsootDemoPerson unsoot_demo_staff[] = {
  { "Oona Brask", "OB", "owner", "1111" },       { "Mara Quillen", "MQ", "advisor", "2222" },
  { "Tobin Esker", "TE", "clerk", "3333" },      { "Dov Hallet", "DH", "lead", "4444" },
  { "Ines Farrow", "IF", "technician", "5555" }, { "Wim Calder", "WC", "technician", "6666" },
};
const gsize unsoot_demo_n_staff = G_N_ELEMENTS (unsoot_demo_staff);

const UnsootDemoSupplier unsoot_demo_suppliers[] = {
  { "Millrace Supply", "555-0190", 4.0, 1.0 },
  { "Ostrand Fluid Works", "555-0191", 9.0, 2.5 },
};
const gsize unsoot_demo_n_suppliers = G_N_ELEMENTS (unsoot_demo_suppliers);

/* Hazard data of a kind that such fluids have; the statements' codes are GHS's. */
const UnsootDemoFluid unsoot_demo_fluids[] = {
  { "A", "Fuel fluid A", "fuel", 0, 4200, 5000, 11500, 58.0, 180.0, 810.0, "danger",
    "GHS02 GHS07 GHS08", "H226 H304 H315 H336", "P210 P233 P280 P301+P310 P331 P501", "1993", 0.6 },
  { "B", "Fuel fluid B", "fuel", 0, 4800, 5000, 13400, 45.0, 150.0, 790.0, "danger",
    "GHS02 GHS07 GHS08", "H226 H304 H319 H336", "P210 P233 P280 P301+P310 P331 P501", "1993",
    0.25 },
  { "C", "Fuel fluid C, low smell", "fuel", 1, 5600, 1000, 3300, 78.0, 195.0, 820.0, "danger",
    "GHS08", "H227 H304", "P210 P280 P301+P310 P331 P501", NULL, 0.15 },
  { "R", "Intake fluid R", "intake", 0, 3900, 5000, 10200, 27.0, 120.0, 860.0, "danger",
    "GHS02 GHS05 GHS07", "H226 H314 H335", "P210 P260 P280 P303+P361+P353 P305+P351+P338 P501",
    "2924", 0.6 },
  { "S", "Intake fluid S", "intake", 1, 4400, 5000, 12100, 40.0, 140.0, 880.0, "warning",
    "GHS02 GHS07", "H226 H315 H319 H335", "P210 P261 P280 P305+P351+P338 P501", "1993", 0.3 },
  { "T", "Intake fluid T, water-based", "intake", 1, 5200, 2000, 6900, 96.0, 100.0, 1010.0,
    "warning", "GHS07", "H315 H319", "P280 P305+P351+P338 P501", NULL, 0.1 },
};
const gsize unsoot_demo_n_fluids = G_N_ELEMENTS (unsoot_demo_fluids);

const UnsootDemoAdapter unsoot_demo_adapters[] = {
  { "F-01", "Supply, quick connect 7.89 mm", "fuel", 3, 0, "a", 2008, 0 },
  { "F-02", "Return, quick connect 6.30 mm", "fuel", 3, 0, "a", 2008, 0 },
  { "F-03", "Supply, quick connect 9.49 mm", "fuel", 2, 0, "b", 2006, 0 },
  { "F-04", "Return, quick connect 7.89 mm", "fuel", 2, 0, "b", 2006, 0 },
  { "F-05", "Supply, 37° size 6", "fuel", 2, 0, "c", 2004, 0 },
  { "F-06", "Return, 37° size 5", "fuel", 2, 0, "c", 2004, 0 },
  { "F-07", "Supply, 37° size 10", "fuel", 2, 0, "d", 2000, 0 },
  { "F-08", "Return, 37° size 8", "fuel", 2, 0, "d", 2000, 0 },
  { "F-09", "Supply, banjo 14 mm", "fuel", 2, 0, "e", 1994, 2009 },
  { "F-10", "Return, barbed 8 mm", "fuel", 2, 0, "e", 1994, 2009 },
  { "F-11", "Bypass hose, short, 8 mm", "fuel", 3, 365, "ab", 1994, 0 },
  { "F-12", "Bypass hose, long, 10 mm", "fuel", 2, 365, "c", 2000, 0 },
  { "V-01", "Valve plate, two ports", "intake", 2, 180, "a", 2008, 0 },
  { "V-02", "Valve plate, one port", "intake", 2, 180, "b", 2006, 2014 },
  { "V-03", "Valve plate, one port, wide", "intake", 2, 180, "b", 2015, 0 },
  { "V-04", "Wand, angled", "intake", 2, 180, "b", 2006, 0 },
  { "V-05", "Hose cone, 76 mm", "intake", 2, 180, "c", 2004, 0 },
  { "V-06", "Hose cone, 102 mm", "intake", 2, 180, "d", 2000, 0 },
  { "V-07", "Cooler plate, oval", "intake", 3, 180, "ac", 2004, 0 },
  { "V-08", "Cooler plate, round", "intake", 3, 180, "bd", 2000, 0 },
};
const gsize unsoot_demo_n_adapters = G_N_ELEMENTS (unsoot_demo_adapters);

/* A family comes more than once where it has a procedure for one side alone. */
const UnsootDemoFamily unsoot_demo_families[] = {
  { 'a', "brindle-t4-5-1", "light", 5100 }, { 'b', "harrow-l6-6-6", "light", 6600 },
  { 'c', "fenmoor-v4-3-0", "light", 3000 }, { 'd', "tolver-h6-9-0", "heavy", 9000 },
  { 'e', "skelder-c4-2-2", "light", 2200 },
};
const gsize unsoot_demo_n_families = G_N_ELEMENTS (unsoot_demo_families);

const UnsootDemoModel unsoot_demo_models[] = {
  { 'a', "Brindle", "T4", "5.1", "A0B", 9900, TRUE, 2011, 2024 },
  { 'a', "Brindle", "T6 dually", "5.1", "A0B", 13500, TRUE, 2011, 2024 },
  { 'b', "Harrow", "Cartage 350", "6.6", "A0H", 9950, TRUE, 2010, 2023 },
  { 'b', "Harrow", "Cartage 450", "6.6", "A0H", 13800, TRUE, 2012, 2023 },
  { 'c', "Fenmoor", "Drover van", "3.0", "A0F", 11030, FALSE, 2008, 2019 },
  { 'c', "Fenmoor", "Drover cab", "3.0", "A0F", 9350, FALSE, 2008, 2019 },
  { 'd', "Tolver", "L80 loader", "9.0", "A0V", 41000, FALSE, 2003, 2022 },
  { 'd', "Tolver", "G250 generator", "9.0", "A0V", 0, FALSE, 2006, 2022 },
  { 'e', "Skelder", "C4 hauler", "2.2", "A0K", 8800, FALSE, 1996, 2004 },
};
const gsize unsoot_demo_n_models = G_N_ELEMENTS (unsoot_demo_models);

const UnsootDemoService unsoot_demo_services[] = {
  { "Both sides", "both", 34900, 100, 1800 },
  { "Fuel side", "fuel", 16900, 50, 900 },
  { "Intake side and EGR", "intake", 24900, 75, 1400 },
};
const gsize unsoot_demo_n_services = G_N_ELEMENTS (unsoot_demo_services);
