/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* "person", "business", "fleet" as a person reads it; the slug itself where it is none of them. */
const char *unsoot_customer_kind_words (const char *kind);
