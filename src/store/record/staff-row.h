/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Who works here. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  char *initials;
  char *role;
  char *pin_hash; /* Argon2id string; NULL: no PIN set yet */
  char *phone;
  gboolean active;
} UnsootStaffRow;
UNSOOT_DECLARE_RECORD (UnsootStaffRow, unsoot_staff_row)

G_END_DECLS
