/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "page-kit.h"

/* The job's pictures, before and after side by side; nothing where none was taken. */
void unsoot_paper_photos (UnsootPageKit *kit, const UnsootJobFile *file);
