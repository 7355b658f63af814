/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "access.h"

void
unsoot_access_name (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
unsoot_access_describe (GtkWidget *widget, const char *description)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description, -1);
}
