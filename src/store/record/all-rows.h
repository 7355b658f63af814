/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Every kind of record, for what must treat them all alike: the log of changes,
   append-only triggers, export, tests. */

#include "adapter-row.h"
#include "booking-row.h"
#include "call-row.h"
#include "change-row.h"
#include "customer-row.h"
#include "draft-row.h"
#include "family-row.h"
#include "fluid-row.h"
#include "invoice-row.h"
#include "job-row.h"
#include "lot-row.h"
#include "machine-row.h"
#include "precheck-row.h"
#include "procedure-row.h"
#include "reading-row.h"
#include "run-row.h"
#include "service-row.h"
#include "shop-row.h"
#include "staff-row.h"
#include "supply-order-row.h"
#include "vehicle-row.h"

/* NULL-terminated, in the order in which rows can be inserted. */
extern const UnsootRecordType *const unsoot_all_records[];
