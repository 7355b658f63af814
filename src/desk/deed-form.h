/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "db.h"
#include "picture-file.h"
#include "role.h"
#include "rows.h"
#include "unit.h"

G_BEGIN_DECLS

/* A deed as a form: what is asked, how it is read, and what is then done in the store. The form
 * knows no rule of the trade: it reads what was typed with the trade's own functions. */

#define UNSOOT_DEED_FIELDS 7

typedef enum
{
  UNSOOT_ASK_TEXT,
  UNSOOT_ASK_VOLUME,   /* mL; litres where no unit is typed */
  UNSOOT_ASK_MONEY,    /* minor units */
  UNSOOT_ASK_DAY,      /* ISO text; a month means its last day */
  UNSOOT_ASK_PRESSURE, /* Pa; psi where no unit is typed */
  UNSOOT_ASK_COUNT,    /* a whole number above zero */
  UNSOOT_ASK_CHOICE,   /* the number that stands for the choice */
} UnsootAskKind;

typedef struct
{
  const char *label; /* N_ () */
  UnsootAskKind kind;
  gboolean optional;
  const char *hint;         /* N_ (): how it may be typed; NULL: none */
  const char *const *words; /* N_ (), NULL-terminated: fixed choices, 0, 1, 2 … */
} UnsootDeedField;

/* What was typed into one field. */
typedef struct
{
  char *text;    /* as typed, stripped; "" where empty; of a day its ISO text */
  gint64 number; /* mL, minor units, count or choice */
  double real;   /* Pa */
} UnsootDeedValue;

/* One filled-in form on its way to the store. */
typedef struct
{
  gint64 record; /* what it is done to */
  gint64 version;
  UnsootDeedValue values[UNSOOT_DEED_FIELDS];
  UnsootPicture picture; /* goes along; its jpeg is NULL where there is none */
  /* set by the deed: */
  gint64 undo_id; /* what could be taken back; 0: nothing */
  char *said;     /* a sentence about what happened; NULL: the deed's own */
} UnsootDeedOrder;

/* On the store's worker. */
typedef gboolean (*UnsootDeedFunc) (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order,
                                    GError **error);

typedef struct
{
  const char *slug;
  const char *title; /* N_ () */
  const char *verb;  /* N_ (): on the button */
  const char *done;  /* N_ (): the toast */
  UnsootDeed deed;   /* who may */
  gboolean destroys; /* its button warns */
  gsize n_fields;
  UnsootDeedField fields[UNSOOT_DEED_FIELDS];
  UnsootDeedFunc carry_out;
  UnsootDeedFunc undo; /* the counter-posting of undo_id; NULL: there is none */
} UnsootDeedForm;

/* A whole text for an empty one: NULL. */
const char *unsoot_deed_text (const UnsootDeedOrder *order, gsize field);

UnsootDeedOrder *unsoot_deed_order_new (gint64 record);
/* All of it but what was said. */
UnsootDeedOrder *unsoot_deed_order_copy (const UnsootDeedOrder *order);
void unsoot_deed_order_free (UnsootDeedOrder *order);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootDeedOrder, unsoot_deed_order_free)

/**
 * unsoot_deed_field_read:
 * @currency: of amounts
 *
 * Reads @text into @value (whose text it replaces). Errors name what is wrong with it.
 */
gboolean unsoot_deed_field_read (const UnsootDeedField *field, const char *text,
                                 const char *currency, UnsootDeedValue *value, GError **error);

G_END_DECLS
