/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* @pdf with an update appended (ISO 32000-1, 7.5.6) in which every font says what its codes
 * stand for in the way that standard asks for (9.10.3): libharu writes a range of another
 * kind, and readers that keep to the standard find, copy and read aloud nothing. A file of
 * another make comes back as it is. */
GBytes *unsoot_pdf_mend_unicode (GBytes *pdf);
