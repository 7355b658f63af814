/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "deed-form.h"

/* The deeds of a job before its work, as forms. */

/* Fields of an authorisation. */
enum
{
  UNSOOT_WORD_BY,
  UNSOOT_WORD_HOW, /* choice: the order of unsoot_word_ways */
  UNSOOT_WORD_AMOUNT,
  UNSOOT_WORD_ORDER,
  UNSOOT_WORD_NOTE,
};

/* Slugs and N_ () words of the ways to give a word; both NULL-terminated. */
extern const char *const unsoot_word_slugs[];
extern const char *const unsoot_word_ways[];

extern const UnsootDeedForm unsoot_job_authorise_form;
extern const UnsootDeedForm unsoot_job_decline_form;
extern const UnsootDeedForm unsoot_job_cancel_form;
extern const UnsootDeedForm unsoot_job_quote_again_form;
extern const UnsootDeedForm unsoot_job_estimate_form;
extern const UnsootDeedForm unsoot_job_line_form;
extern const UnsootDeedForm unsoot_job_line_decline_form;
extern const UnsootDeedForm unsoot_job_line_offer_form; /* a declined one once more */
