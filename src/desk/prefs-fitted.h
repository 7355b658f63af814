/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "family-row.h"
#include "prefs-edit.h"

/* What an engine family is fitted with, where liquid can stand in it, and a dose of its own. */
extern const UnsootPrefsEdit unsoot_prefs_fitted;

/* What a family has that nobody has looked at yet: everything that asks for care. */
void unsoot_prefs_fitted_begin (UnsootFamilyRow *family);
