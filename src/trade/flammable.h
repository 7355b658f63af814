/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Flammable liquids by 29 CFR 1910.106, and ignitable waste by 40 CFR 261.21.
 * Local fire codes may ask for less on the shelf: check them. */

typedef enum
{
  UNSOOT_FLAMMABLE_UNKNOWN, /* no flash point known: look it up, don't guess */
  UNSOOT_FLAMMABLE_1,
  UNSOOT_FLAMMABLE_2,
  UNSOOT_FLAMMABLE_3,
  UNSOOT_FLAMMABLE_4,
  UNSOOT_FLAMMABLE_NOT, /* flash point above 199.4 °F (93 °C) */
} UnsootFlammable;

#define UNSOOT_FLAMMABLES 6

/* Category from flash and boiling point in °C. NAN is unknown; below 23 °C an
 * unknown boiling point counts as low, the stricter reading. */
UnsootFlammable unsoot_flammable_category (double flash_c, double boiling_c);
/* The same in °F. */
UnsootFlammable unsoot_flammable_category_f (double flash_f, double boiling_f);

/* "H224" … "H227", or NULL. */
const char *unsoot_flammable_statement (UnsootFlammable category);

/* Waste code D001, ignitable: flash point below 60 °C (140 °F). FALSE for NAN. */
gboolean unsoot_flammable_is_d001 (double flash_c);

typedef enum
{
  UNSOOT_STORED_CABINET, /* in one storage cabinet */
  UNSOOT_STORED_OUTSIDE, /* in containers outside cabinets, in one fire area */
} UnsootStored;

/**
 * unsoot_storage_check:
 * @ml: what is stored, by #UnsootFlammable; [UNKNOWN] is treated as category 1
 *
 * Returns: (transfer full) (nullable): one sentence for each limit passed, or NULL
 */
char *unsoot_storage_check (UnsootStored stored, const gint64 ml[UNSOOT_FLAMMABLES]);
