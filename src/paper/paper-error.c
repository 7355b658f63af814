/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-error.h"

G_DEFINE_QUARK (unsoot - paper - error - quark, unsoot_paper_error)
