/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"

G_BEGIN_DECLS

/* Across the whole window while an alarm rings: which, how late, and the two acts it needs. */
#define UNSOOT_TYPE_ALARM_BANNER (unsoot_alarm_banner_get_type ())
G_DECLARE_FINAL_TYPE (UnsootAlarmBanner, unsoot_alarm_banner, UNSOOT, ALARM_BANNER, AdwBin)

void unsoot_alarm_banner_set_session (UnsootAlarmBanner *self, UnsootSession *session);

G_END_DECLS
