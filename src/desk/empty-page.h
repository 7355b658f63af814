/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/**
 * unsoot_empty_page_new:
 * @icon: symbolic
 * @title: what is missing here, or what went wrong
 * @sentence: what goes here, or what to do; plain text
 * @verb: (nullable): label of the first act
 * @action: (nullable): its detailed action name
 *
 * What a place shows where it has nothing else to show.
 */
GtkWidget *unsoot_empty_page_new (const char *icon, const char *title, const char *sentence,
                                  const char *verb, const char *action);
