/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "authorise.h"

#include <glib/gi18n-lib.h>

#include "trade-error.h"

void
unsoot_authority_result_clear (UnsootAuthorityResult *result)
{
  g_clear_pointer (&result->sentence, g_free);
}

static gint64
allowed_overrun (const UnsootAuthorised *authorised, const UnsootOverrunLimit *limit)
{
  __int128 basis = MIN (authorised->estimate, authorised->authorised);
  __int128 share = limit->percent < 0 ? -1 : basis * limit->percent / 100000;
  if (share > G_MAXINT64)
    share = G_MAXINT64;
  if (limit->percent < 0 && limit->amount < 0)
    return 0;
  if (limit->percent < 0)
    return limit->amount;
  return limit->amount < 0 ? (gint64) share : MIN ((gint64) share, limit->amount);
}

static UnsootAuthority
judge (const UnsootAuthorised *authorised, const UnsootAuthorityResult *result)
{
  if (!authorised->given)
    return UNSOOT_AUTHORITY_NONE;
  if (result->overrun == 0)
    return UNSOOT_AUTHORITY_COVERED;
  return result->overrun <= result->allowed ? UNSOOT_AUTHORITY_WITHIN : UNSOOT_AUTHORITY_ASK;
}

static char *
sentence (UnsootAuthority verdict, const char *final_amount, const char *agreed,
          const char *overrun, const char *allowed)
{
  switch (verdict)
    {
    case UNSOOT_AUTHORITY_NONE:
      return g_strdup_printf (
          _ ("Nobody has authorised this work of %s yet; ask the customer before "
             "it starts."),
          final_amount);
    case UNSOOT_AUTHORITY_COVERED:
      return g_strdup_printf (_ ("The work comes to %s; %s is authorised."), final_amount, agreed);
    case UNSOOT_AUTHORITY_WITHIN:
      return g_strdup_printf (
          _ ("The work comes to %s, %s above the %s authorised; the limit set for "
             "this shop allows %s."),
          final_amount, overrun, agreed, allowed);
    case UNSOOT_AUTHORITY_ASK:
      return g_strdup_printf (
          _ ("The work comes to %s, %s above the %s authorised, and the limit set "
             "for this shop allows %s: ask the customer again, and record who "
             "agreed, when and how."),
          final_amount, overrun, agreed, allowed);
    }
  g_assert_not_reached ();
}

gboolean
unsoot_authorise_check (const UnsootAuthorised *authorised, gint64 final_amount,
                        const UnsootOverrunLimit *limit, const char *currency,
                        UnsootMoneyStyle style, UnsootAuthorityResult *result, GError **error)
{
  if (authorised->estimate < 0 || authorised->authorised < 0 || final_amount < 0)
    {
      g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                           _ ("An estimate, an authorised or a final amount can't be below zero."));
      return FALSE;
    }
  gint64 agreed = authorised->given ? authorised->authorised : 0;
  result->overrun = MAX (final_amount - agreed, 0);
  result->allowed = authorised->given ? allowed_overrun (authorised, limit) : 0;
  result->verdict = judge (authorised, result);
  g_autofree char *final_text = unsoot_money_format (final_amount, currency, style);
  g_autofree char *agreed_text = unsoot_money_format (agreed, currency, style);
  g_autofree char *overrun_text = unsoot_money_format (result->overrun, currency, style);
  g_autofree char *allowed_text = unsoot_money_format (result->allowed, currency, style);
  result->sentence
      = sentence (result->verdict, final_text, agreed_text, overrun_text, allowed_text);
  return TRUE;
}
