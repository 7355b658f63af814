/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

/* The alarm, heard. It sounds by the sound server under the name that sound themes have for it,
 * in a media role of its own: sounds of the desktop may be turned off, this one then still has
 * its volume. Where nothing can be played the display's bell rings. */

typedef enum
{
  UNSOOT_HEARD_SOUND, /* played to its end */
  UNSOOT_HEARD_BELL,  /* the display's bell only: there is no sound server, or no such sound */
} UnsootHeard;

/* Rings once, at once; never waits for the sound server. @callback (may be NULL) runs on the main
 * loop when the sound is over; @cancellable silences it. */
void unsoot_bay_bell_ring_async (GCancellable *cancellable, GAsyncReadyCallback callback,
                                 gpointer user_data);
UnsootHeard unsoot_bay_bell_ring_finish (GAsyncResult *result);

/* The display's bell alone. */
void unsoot_bay_bell_beep (void);

/* What a person who tried the alarm is told, translated. */
const char *unsoot_heard_words (UnsootHeard heard);
