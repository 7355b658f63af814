/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "card.h"
#include "prefs-file.h"
#include "session.h"

/* The cards of the preferences. Each fills an emptied card from the file. */
void unsoot_prefs_card_shop (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session);
void unsoot_prefs_card_hours (UnsootCard *card, const UnsootPrefsFile *file,
                              UnsootSession *session);
void unsoot_prefs_card_holidays (UnsootCard *card, const UnsootPrefsFile *file,
                                 UnsootSession *session);
void unsoot_prefs_card_bays (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session);
void unsoot_prefs_card_services (UnsootCard *card, const UnsootPrefsFile *file,
                                 UnsootSession *session);
void unsoot_prefs_card_doses (UnsootCard *card, const UnsootPrefsFile *file,
                              UnsootSession *session);
void unsoot_prefs_card_taxes (UnsootCard *card, const UnsootPrefsFile *file,
                              UnsootSession *session);
void unsoot_prefs_card_staff (UnsootCard *card, const UnsootPrefsFile *file,
                              UnsootSession *session);
void unsoot_prefs_card_machines (UnsootCard *card, const UnsootPrefsFile *file,
                                 UnsootSession *session);
void unsoot_prefs_card_fluids (UnsootCard *card, const UnsootPrefsFile *file,
                               UnsootSession *session);
void unsoot_prefs_card_families (UnsootCard *card, const UnsootPrefsFile *file,
                                 UnsootSession *session);
