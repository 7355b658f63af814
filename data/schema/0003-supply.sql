-- SPDX-License-Identifier: GPL-3.0-or-later
-- What is ordered from suppliers and what became of it; why a tank's event was corrected.

-- Fluids ordered, one kind a row.
CREATE TABLE supply_orders (
  id @KEY,
  number @INT64 NOT NULL,  -- what the supplier is told, from 1
  supplier_id @INT64 NOT NULL REFERENCES suppliers (id),
  fluid_id @INT64 NOT NULL REFERENCES fluids (id),
  pack_ml @INT64 NOT NULL,
  packs @INT64 NOT NULL,
  pack_cost_minor @INT64,  -- each, as agreed; NULL: not agreed
  expected_on TEXT,  -- as told when it was ordered
  note TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  CHECK (pack_ml > 0),
  CHECK (packs > 0),
  UNIQUE (number)
) @STRICT;

-- What became of an order. What of it is still to come follows from these and the stock moves.
CREATE TABLE supply_order_events (
  id @KEY,
  order_id @INT64 NOT NULL REFERENCES supply_orders (id),
  kind TEXT NOT NULL,
  move_id @INT64 REFERENCES stock_moves (id),  -- the delivery
  expected_on TEXT,  -- the new day
  reason TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  reverses_id @INT64 REFERENCES supply_order_events (id),  -- the cancelling that this one takes back
  CHECK (kind IN ('received', 'expected', 'cancelled', 'reopened')),
  CHECK (kind <> 'received' OR move_id IS NOT NULL),
  CHECK (kind <> 'cancelled' OR reason IS NOT NULL),
  CHECK (kind <> 'reopened' OR reverses_id IS NOT NULL)
) @STRICT;

CREATE INDEX supply_orders_by_fluid_id ON supply_orders (fluid_id);
CREATE INDEX supply_order_events_by_order_id ON supply_order_events (order_id);
CREATE INDEX stock_moves_by_reverses_id ON stock_moves (reverses_id);

-- Why a correction was made; NULL for all other events.
ALTER TABLE tank_events ADD COLUMN reason TEXT;
