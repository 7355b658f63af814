/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-kit.h"

/* The head of the first page: the shop, what paper this is, its number and date. */
void unsoot_page_draw_first_head (UnsootPageKit *kit);

/* The same in one line, on every page after. */
void unsoot_page_draw_later_head (UnsootPageKit *kit);

/* Shop, remarks on what could not be shown, "Page 2 of 3". @number counts from 1. */
void unsoot_page_draw_foot (UnsootPageKit *kit, guint number);
