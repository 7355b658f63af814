/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Whose place a person has in the shop; everyone who works at a desk has one. */
typedef enum
{
  UNSOOT_ROLE_ADVISOR,
  UNSOOT_ROLE_CLERK,
  UNSOOT_ROLE_TECHNICIAN,
  UNSOOT_ROLE_LEAD,
  UNSOOT_ROLE_OWNER,
} UnsootRole;

/* What a person does that changes the book, or that not everyone may see. */
typedef enum
{
  UNSOOT_DEED_ESTIMATE,
  UNSOOT_DEED_AUTHORISE,
  UNSOOT_DEED_BOOK,
  UNSOOT_DEED_MOVE_BOOKING,
  UNSOOT_DEED_ARRIVE,
  UNSOOT_DEED_CHECK_VEHICLE,
  UNSOOT_DEED_OVERRIDE_CHECK,
  UNSOOT_DEED_DECLINE,
  UNSOOT_DEED_CANCEL,
  UNSOOT_DEED_RUN_STEP,
  UNSOOT_DEED_HALT,
  UNSOOT_DEED_RECORD_READING,
  UNSOOT_DEED_FINISH,
  UNSOOT_DEED_RELEASE_INCOMPLETE,
  UNSOOT_DEED_ENTER_DOSE,
  UNSOOT_DEED_INVOICE,
  UNSOOT_DEED_CREDIT,
  UNSOOT_DEED_TAKE_PAYMENT,
  UNSOOT_DEED_POST_STOCK,
  UNSOOT_DEED_ADJUST_STOCK,
  UNSOOT_DEED_RECEIVE_DELIVERY,
  UNSOOT_DEED_ORDER,
  UNSOOT_DEED_HOLD_LOT,
  UNSOOT_DEED_RECORD_WASTE,
  UNSOOT_DEED_LEND_ADAPTER,
  UNSOOT_DEED_RETURN_ADAPTER,
  UNSOOT_DEED_CHECK_MACHINE,
  UNSOOT_DEED_TEND_TANK,
  UNSOOT_DEED_EDIT_CUSTOMER,
  UNSOOT_DEED_EDIT_VEHICLE,
  UNSOOT_DEED_EDIT_FLUID,
  UNSOOT_DEED_EDIT_ADAPTER,
  UNSOOT_DEED_EDIT_FAMILY,
  UNSOOT_DEED_EDIT_PROCEDURE,
  UNSOOT_DEED_EDIT_DOSE_RULE,
  UNSOOT_DEED_EDIT_PRICES,
  UNSOOT_DEED_EDIT_STAFF,
  UNSOOT_DEED_EDIT_SHOP,
  UNSOOT_DEED_READ_FIGURES,
  UNSOOT_DEED_IMPORT,
  UNSOOT_DEED_EXPORT,
  UNSOOT_DEED_BACKUP,
  UNSOOT_DEED_RESTORE,
} UnsootDeed;

#define UNSOOT_N_DEEDS (UNSOOT_DEED_RESTORE + 1)

const char *unsoot_role_slug (UnsootRole role);
const char *unsoot_role_words (UnsootRole role);
gboolean unsoot_role_find (const char *slug, UnsootRole *role);
gboolean unsoot_role_parse (const char *text, UnsootRole *role, GError **error);

const char *unsoot_deed_slug (UnsootDeed deed);
/* What is done, as it follows "can't": "sign a job off". */
const char *unsoot_deed_words (UnsootDeed deed);
gboolean unsoot_deed_find (const char *slug, UnsootDeed *deed);

/* Whether a person in @role may do @deed. The one table of rights. */
gboolean unsoot_role_may (UnsootRole role, UnsootDeed deed);

/* "A parts clerk can't sign a job off; ask a technician", or NULL where it is allowed. Free it. */
char *unsoot_role_refusal (UnsootRole role, UnsootDeed deed);

/* As unsoot_role_may (), with that sentence as UNSOOT_TRADE_ERROR_REFUSED. */
gboolean unsoot_role_check (UnsootRole role, UnsootDeed deed, GError **error);
