/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk.h"

#include <stdlib.h>

#include "application.h"
#include "unsoot-resources.h"

int
unsoot_desk_main (int argc, char **argv)
{
  g_autoptr (UnsootApplication) application = NULL;
  int status;

  g_resources_register (unsoot_desk_get_resource ());
  application = unsoot_application_new ();
  status = g_application_run (G_APPLICATION (application), argc, argv);
  return status != EXIT_SUCCESS ? status : unsoot_application_get_status (application);
}
