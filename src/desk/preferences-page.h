/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* What the shop has settled for itself: its details, hours, holidays, bays, services and prices,
 * doses, taxes, and who works there. Whoever may not change a part can read it. */
#define UNSOOT_TYPE_PREFERENCES_PAGE (unsoot_preferences_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPreferencesPage, unsoot_preferences_page, UNSOOT, PREFERENCES_PAGE,
                      UnsootView)

G_END_DECLS
