/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "page-kit.h"

/* Customer, vehicle and job in three columns, as every paper about a job begins; then what
 * the customer told and the trouble codes. */
void unsoot_paper_facts_of_job (UnsootPageKit *kit, const UnsootJobFile *file);
