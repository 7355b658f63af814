/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stop-happening.h"

UnsootStopPage
unsoot_stop_page_of (UnsootHappening happening)
{
  switch (happening)
    {
    case UNSOOT_HAPPENING_STALL:
      return UNSOOT_STOP_PAGE_STALLED;
    case UNSOOT_HAPPENING_RUNAWAY:
      return UNSOOT_STOP_PAGE_RUNAWAY;
    case UNSOOT_HAPPENING_BURST_HOSE:
    case UNSOOT_HAPPENING_LEAK_OR_FIRE:
      return UNSOOT_STOP_PAGE_LEAK;
    case UNSOOT_HAPPENING_NONE:
    case UNSOOT_HAPPENING_LOST_AIR:
    case UNSOOT_HAPPENING_CO_ALARM:
    case UNSOOT_HAPPENING_STOP:
      return UNSOOT_STOP_PAGE_ORDINARY;
    }
  g_return_val_if_reached (UNSOOT_STOP_PAGE_ORDINARY);
}

UnsootHappening
unsoot_stop_page_happening (UnsootStopPage page)
{
  switch (page)
    {
    case UNSOOT_STOP_PAGE_ORDINARY:
      return UNSOOT_HAPPENING_STOP;
    case UNSOOT_STOP_PAGE_RUNAWAY:
      return UNSOOT_HAPPENING_RUNAWAY;
    case UNSOOT_STOP_PAGE_LEAK:
      return UNSOOT_HAPPENING_LEAK_OR_FIRE;
    case UNSOOT_STOP_PAGE_STALLED:
      return UNSOOT_HAPPENING_STALL;
    }
  g_return_val_if_reached (UNSOOT_HAPPENING_STOP);
}
