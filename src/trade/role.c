/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "role.h"

#include <glib/gi18n-lib.h>

#include "slug.h"
#include "trade-error.h"

#define A (1u << UNSOOT_ROLE_ADVISOR)
#define C (1u << UNSOOT_ROLE_CLERK)
#define T (1u << UNSOOT_ROLE_TECHNICIAN)
#define L (1u << UNSOOT_ROLE_LEAD)
#define O (1u << UNSOOT_ROLE_OWNER)
#define ANYONE (A | C | T | L | O)

static const UnsootSlug roles[] = {
  { UNSOOT_ROLE_ADVISOR, "advisor", N_ ("Service advisor") },
  { UNSOOT_ROLE_CLERK, "clerk", N_ ("Parts clerk") },
  { UNSOOT_ROLE_TECHNICIAN, "technician", N_ ("Technician") },
  { UNSOOT_ROLE_LEAD, "lead", N_ ("Lead technician") },
  { UNSOOT_ROLE_OWNER, "owner", N_ ("Shop owner") },
  { 0, NULL, NULL },
};

/* The same people inside a sentence: who is refused, and who is asked instead. */
static const struct
{
  const char *who;
  const char *ask;
} in_sentence[] = {
  [UNSOOT_ROLE_ADVISOR] = { N_ ("A service advisor"), N_ ("a service advisor") },
  [UNSOOT_ROLE_CLERK] = { N_ ("A parts clerk"), N_ ("a parts clerk") },
  [UNSOOT_ROLE_TECHNICIAN] = { N_ ("A technician"), N_ ("a technician") },
  [UNSOOT_ROLE_LEAD] = { N_ ("A lead technician"), N_ ("the lead technician") },
  [UNSOOT_ROLE_OWNER] = { N_ ("A shop owner"), N_ ("the shop owner") },
};

static const UnsootSlug deeds[] = {
  { UNSOOT_DEED_ESTIMATE, "estimate", N_ ("write an estimate") },
  { UNSOOT_DEED_AUTHORISE, "authorise", N_ ("record an authorisation") },
  { UNSOOT_DEED_BOOK, "book", N_ ("book a job") },
  { UNSOOT_DEED_MOVE_BOOKING, "move-booking", N_ ("move a booking") },
  { UNSOOT_DEED_ARRIVE, "arrive", N_ ("record an arrival") },
  { UNSOOT_DEED_CHECK_VEHICLE, "check-vehicle", N_ ("answer a check before the work") },
  { UNSOOT_DEED_OVERRIDE_CHECK, "override-check", N_ ("override a check before the work") },
  { UNSOOT_DEED_DECLINE, "decline", N_ ("record declined work") },
  { UNSOOT_DEED_CANCEL, "cancel", N_ ("cancel a job") },
  { UNSOOT_DEED_RUN_STEP, "run-step", N_ ("confirm a step at the machine") },
  { UNSOOT_DEED_HALT, "halt", N_ ("stop a run") },
  { UNSOOT_DEED_RECORD_READING, "record-reading", N_ ("record a reading") },
  { UNSOOT_DEED_FINISH, "finish", N_ ("sign a job off") },
  { UNSOOT_DEED_RELEASE_INCOMPLETE, "release-incomplete", N_ ("release a vehicle incomplete") },
  { UNSOOT_DEED_ENTER_DOSE, "enter-dose", N_ ("enter a dose") },
  { UNSOOT_DEED_INVOICE, "invoice", N_ ("issue an invoice") },
  { UNSOOT_DEED_CREDIT, "credit", N_ ("issue a credit note") },
  { UNSOOT_DEED_TAKE_PAYMENT, "take-payment", N_ ("take a payment") },
  { UNSOOT_DEED_POST_STOCK, "post-stock", N_ ("post stock") },
  { UNSOOT_DEED_ADJUST_STOCK, "adjust-stock", N_ ("adjust a stock count") },
  { UNSOOT_DEED_RECEIVE_DELIVERY, "receive-delivery", N_ ("receive a delivery") },
  { UNSOOT_DEED_ORDER, "order", N_ ("order from a supplier") },
  { UNSOOT_DEED_HOLD_LOT, "hold-lot", N_ ("hold or recall a lot") },
  { UNSOOT_DEED_RECORD_WASTE, "record-waste", N_ ("record waste") },
  { UNSOOT_DEED_LEND_ADAPTER, "lend-adapter", N_ ("lend an adapter") },
  { UNSOOT_DEED_RETURN_ADAPTER, "return-adapter", N_ ("take an adapter back") },
  { UNSOOT_DEED_CHECK_MACHINE, "check-machine", N_ ("record a machine's gauge check") },
  { UNSOOT_DEED_TEND_TANK, "tend-tank", N_ ("drain, flush or hold a tank") },
  { UNSOOT_DEED_EDIT_CUSTOMER, "edit-customer", N_ ("change a customer") },
  { UNSOOT_DEED_EDIT_VEHICLE, "edit-vehicle", N_ ("change a vehicle") },
  { UNSOOT_DEED_EDIT_FLUID, "edit-fluid", N_ ("change a fluid") },
  { UNSOOT_DEED_EDIT_ADAPTER, "edit-adapter", N_ ("change an adapter or what it fits") },
  { UNSOOT_DEED_EDIT_FAMILY, "edit-family", N_ ("change an engine family") },
  { UNSOOT_DEED_EDIT_PROCEDURE, "edit-procedure", N_ ("change a procedure") },
  { UNSOOT_DEED_EDIT_DOSE_RULE, "edit-dose-rule", N_ ("change a dose rule") },
  { UNSOOT_DEED_EDIT_PRICES, "edit-prices", N_ ("change prices or taxes") },
  { UNSOOT_DEED_EDIT_STAFF, "edit-staff", N_ ("change who works here") },
  { UNSOOT_DEED_EDIT_SHOP, "edit-shop", N_ ("change the shop's details") },
  { UNSOOT_DEED_READ_FIGURES, "read-figures", N_ ("read the business figures") },
  { UNSOOT_DEED_IMPORT, "import", N_ ("bring records in") },
  { UNSOOT_DEED_EXPORT, "export", N_ ("take records out") },
  { UNSOOT_DEED_BACKUP, "backup", N_ ("make a backup") },
  { UNSOOT_DEED_RESTORE, "restore", N_ ("restore a backup") },
  { 0, NULL, NULL },
};

static const struct
{
  guint allowed;
  UnsootRole ask;
} rights[UNSOOT_N_DEEDS] = {
  [UNSOOT_DEED_ESTIMATE] = { A | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_AUTHORISE] = { A | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_BOOK] = { A | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_MOVE_BOOKING] = { A | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_ARRIVE] = { A | T | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_CHECK_VEHICLE] = { A | T | L | O, UNSOOT_ROLE_TECHNICIAN },
  [UNSOOT_DEED_OVERRIDE_CHECK] = { L | O, UNSOOT_ROLE_LEAD },
  [UNSOOT_DEED_DECLINE] = { A | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_CANCEL] = { A | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_RUN_STEP] = { T | L | O, UNSOOT_ROLE_TECHNICIAN },
  /* Whoever stands next to it stops it. */
  [UNSOOT_DEED_HALT] = { ANYONE, UNSOOT_ROLE_TECHNICIAN },
  [UNSOOT_DEED_RECORD_READING] = { T | L | O, UNSOOT_ROLE_TECHNICIAN },
  [UNSOOT_DEED_FINISH] = { T | L | O, UNSOOT_ROLE_TECHNICIAN },
  [UNSOOT_DEED_RELEASE_INCOMPLETE] = { T | L | O, UNSOOT_ROLE_LEAD },
  [UNSOOT_DEED_ENTER_DOSE] = { L | O, UNSOOT_ROLE_LEAD },
  [UNSOOT_DEED_INVOICE] = { A | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_CREDIT] = { A | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_TAKE_PAYMENT] = { A | C | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_POST_STOCK] = { C | T | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_ADJUST_STOCK] = { C | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_RECEIVE_DELIVERY] = { A | C | T | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_ORDER] = { C | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_HOLD_LOT] = { C | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_RECORD_WASTE] = { C | T | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_LEND_ADAPTER] = { A | C | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_RETURN_ADAPTER] = { A | C | T | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_CHECK_MACHINE] = { T | L | O, UNSOOT_ROLE_TECHNICIAN },
  /* Outside a run: what is left goes back to the store or into the waste, which is the clerk's. */
  [UNSOOT_DEED_TEND_TANK] = { C | T | L | O, UNSOOT_ROLE_TECHNICIAN },
  [UNSOOT_DEED_EDIT_CUSTOMER] = { A | C | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_EDIT_VEHICLE] = { A | T | L | O, UNSOOT_ROLE_ADVISOR },
  [UNSOOT_DEED_EDIT_FLUID] = { C | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_EDIT_ADAPTER] = { C | L | O, UNSOOT_ROLE_CLERK },
  [UNSOOT_DEED_EDIT_FAMILY] = { L | O, UNSOOT_ROLE_LEAD },
  [UNSOOT_DEED_EDIT_PROCEDURE] = { L | O, UNSOOT_ROLE_LEAD },
  [UNSOOT_DEED_EDIT_DOSE_RULE] = { L | O, UNSOOT_ROLE_LEAD },
  [UNSOOT_DEED_EDIT_PRICES] = { O, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_EDIT_STAFF] = { O, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_EDIT_SHOP] = { O, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_READ_FIGURES] = { O, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_IMPORT] = { A | C | L | O, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_EXPORT] = { A | C | L | O, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_BACKUP] = { ANYONE, UNSOOT_ROLE_OWNER },
  [UNSOOT_DEED_RESTORE] = { O, UNSOOT_ROLE_OWNER },
};

const char *
unsoot_role_slug (UnsootRole role)
{
  return unsoot_slug_of (roles, (int) role);
}

const char *
unsoot_role_words (UnsootRole role)
{
  return unsoot_slug_words (roles, (int) role);
}

gboolean
unsoot_role_find (const char *slug, UnsootRole *role)
{
  int value = 0;

  if (!unsoot_slug_find (roles, slug, &value))
    return FALSE;
  *role = (UnsootRole) value;
  return TRUE;
}

gboolean
unsoot_role_parse (const char *text, UnsootRole *role, GError **error)
{
  int value = 0;

  /* Translators: follows "“…” is not" */
  if (!unsoot_slug_parse (roles, _ ("a role"), text, &value, error))
    return FALSE;
  *role = (UnsootRole) value;
  return TRUE;
}

const char *
unsoot_deed_slug (UnsootDeed deed)
{
  return unsoot_slug_of (deeds, (int) deed);
}

const char *
unsoot_deed_words (UnsootDeed deed)
{
  return unsoot_slug_words (deeds, (int) deed);
}

gboolean
unsoot_deed_find (const char *slug, UnsootDeed *deed)
{
  int value = 0;

  if (!unsoot_slug_find (deeds, slug, &value))
    return FALSE;
  *deed = (UnsootDeed) value;
  return TRUE;
}

gboolean
unsoot_role_may (UnsootRole role, UnsootDeed deed)
{
  return (rights[deed].allowed & (1u << role)) != 0;
}

char *
unsoot_role_refusal (UnsootRole role, UnsootDeed deed)
{
  if (unsoot_role_may (role, deed))
    return NULL;
  /* Translators: who, what is not allowed, who is asked instead:
     "A parts clerk can't sign a job off; ask a technician" */
  return g_strdup_printf (_ ("%s can't %s; ask %s"), _ (in_sentence[role].who),
                          unsoot_deed_words (deed), _ (in_sentence[rights[deed].ask].ask));
}

gboolean
unsoot_role_check (UnsootRole role, UnsootDeed deed, GError **error)
{
  g_autofree char *refusal = unsoot_role_refusal (role, deed);

  if (refusal == NULL)
    return TRUE;
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, refusal);
  return FALSE;
}
