/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* When something asks for a hand. Common practice, no source. */

/* Seconds that a vehicle may wait past its time before the bay owes it a word. */
#define UNSOOT_ATTENTION_WAIT (15 * 60)

/* Seconds without an entry after which a run is thought to be cut off. */
#define UNSOOT_ATTENTION_SILENT_RUN (45 * 60)

/* Days that an estimate may wait for an answer, before it runs out, and after. */
#define UNSOOT_ATTENTION_ESTIMATE_WAITS 3
#define UNSOOT_ATTENTION_ESTIMATE_ENDS 3
#define UNSOOT_ATTENTION_ESTIMATE_GONE 30

/* Days ahead at which a lot's date, a check, or hoses are spoken of. */
#define UNSOOT_ATTENTION_LOT 30
#define UNSOOT_ATTENTION_GAUGE 7
#define UNSOOT_ATTENTION_HOSES 14

/* Days before the next service at which its owner is reminded, and after which no more. */
#define UNSOOT_ATTENTION_SERVICE 14
#define UNSOOT_ATTENTION_SERVICE_GONE 60
