/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The shop's day: its strip, and what needs a hand. Property "hands": how many lines. */
#define UNSOOT_TYPE_TODAY_PAGE (unsoot_today_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootTodayPage, unsoot_today_page, UNSOOT, TODAY_PAGE, UnsootView)

guint unsoot_today_page_get_hands (UnsootTodayPage *self);

G_END_DECLS
