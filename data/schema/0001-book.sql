-- SPDX-License-Identifier: GPL-3.0-or-later
-- The book of the shop. @KEY, @INT64, @REAL64, @BYTES and @STRICT are filled in by the driver.
-- Money is in minor units, volume in mL, time in Unix seconds UTC, dates are ISO text.
-- Tables without a version are postings: they are never updated or deleted.

-- The one shop whose book this is.
CREATE TABLE shop (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,  -- as it stands on paper
  street TEXT,
  town TEXT,
  region TEXT,  -- state or province: limits of estimates follow it
  postcode TEXT,
  phone TEXT,
  email TEXT,
  tax_number TEXT,
  currency TEXT NOT NULL,  -- ISO 4217
  paper TEXT NOT NULL,  -- letter or a4
  timezone TEXT,  -- IANA name: the clock on paper and planner; NULL: that of this computer
  estimate_over_percent @REAL64,  -- an overrun beyond this share asks for a new word from the customer; NULL: any overrun asks
  estimate_over_minor @INT64,  -- or beyond this amount; NULL: no such limit
  estimate_valid_days @INT64 NOT NULL,
  next_due_months @INT64 NOT NULL,
  next_due_metres @INT64 NOT NULL,  -- distance until the next service
  next_due_seconds @INT64 NOT NULL,  -- engine hours until the next service, in seconds
  payment_note TEXT,  -- how to pay, printed on the invoice
  soot_note TEXT,  -- the shop's own line under the report
  CHECK (paper IN ('letter', 'a4'))
) @STRICT;

-- When the shop is open.
CREATE TABLE open_hours (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  weekday @INT64 NOT NULL,  -- 1 Monday to 7 Sunday
  opens_minute @INT64 NOT NULL,  -- minutes from midnight
  closes_minute @INT64 NOT NULL,
  CHECK (weekday BETWEEN 1 AND 7),
  CHECK (closes_minute > opens_minute)
) @STRICT;

-- Days on which the shop is shut.
CREATE TABLE holidays (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  day TEXT NOT NULL,
  name TEXT NOT NULL
) @STRICT;

-- Who sends fluids.
CREATE TABLE suppliers (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,
  phone TEXT,
  email TEXT,
  lead_days @REAL64,  -- usual days from order to delivery
  lead_days_spread @REAL64  -- standard deviation of the same
) @STRICT;

-- Who works here.
CREATE TABLE staff (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,
  initials TEXT NOT NULL,
  role TEXT NOT NULL,
  pin_hash TEXT,  -- Argon2id string; NULL: no PIN set yet
  phone TEXT,
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  CHECK (role IN ('advisor', 'clerk', 'technician', 'lead', 'owner'))
) @STRICT;

-- Who pays.
CREATE TABLE customers (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  kind TEXT NOT NULL,  -- person, business or fleet
  name TEXT NOT NULL,
  contact TEXT,  -- whom to ask for
  email TEXT,
  tax_exempt INTEGER NOT NULL CHECK (tax_exempt IN (0, 1)),
  tax_exempt_reason TEXT,
  tax_exempt_number TEXT,
  terms_days @INT64 NOT NULL,  -- days to pay; 0 is at once
  po_required INTEGER NOT NULL CHECK (po_required IN (0, 1)),  -- work needs a purchase-order number
  po_limit_minor @INT64,  -- the most one order covers; NULL: no limit
  reminders_ok INTEGER NOT NULL CHECK (reminders_ok IN (0, 1)),  -- consented to reminders
  note TEXT,
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  CHECK (kind IN ('person', 'business', 'fleet'))
) @STRICT;

-- How a customer is reached.
CREATE TABLE customer_phones (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  customer_id @INT64 NOT NULL REFERENCES customers (id),
  label TEXT,
  number TEXT NOT NULL  -- as typed
) @STRICT;

-- Where a customer gets letters, and the yards where units stand.
CREATE TABLE customer_addresses (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  customer_id @INT64 NOT NULL REFERENCES customers (id),
  label TEXT,  -- billing, or a yard's name
  street TEXT,
  town TEXT,
  region TEXT,
  postcode TEXT
) @STRICT;

-- Engine families: what the procedures and doses hang on.
CREATE TABLE families (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,
  make TEXT NOT NULL,
  engine TEXT NOT NULL,
  size_class TEXT NOT NULL,  -- small, light or heavy
  displacement_ml @INT64,
  lift_pump INTEGER NOT NULL CHECK (lift_pump IN (0, 1)),
  lift_pump_bypass INTEGER NOT NULL CHECK (lift_pump_bypass IN (0, 1)),  -- the maker allows the bypass hose; else the pump is unplugged
  window_min_pa @REAL64,  -- inlet pressure while running; NULL: none entered, can't be run
  window_max_pa @REAL64,
  fuel_dose_ml @INT64,  -- the family's own dose; NULL: by size class
  intake_dose_ml @INT64,
  has_egr INTEGER NOT NULL CHECK (has_egr IN (0, 1)),
  has_egr_cooler INTEGER NOT NULL CHECK (has_egr_cooler IN (0, 1)),
  has_heater INTEGER NOT NULL CHECK (has_heater IN (0, 1)),  -- intake heater
  has_regeneration INTEGER NOT NULL CHECK (has_regeneration IN (0, 1)),  -- particle filter that regenerates
  has_road INTEGER NOT NULL CHECK (has_road IN (0, 1)),  -- a generator or loader has none: run under load
  low_points TEXT,  -- names, one a line: where liquid can stand
  note TEXT,
  CHECK (size_class IN ('small', 'light', 'heavy'))
) @STRICT;

-- What is worked on.
CREATE TABLE vehicles (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  customer_id @INT64 NOT NULL REFERENCES customers (id),  -- who owns it now
  family_id @INT64 REFERENCES families (id),  -- engine family; NULL: not settled yet
  vin TEXT,  -- 17 characters, or what is on the frame
  plate TEXT,
  plate_region TEXT,
  unit_number TEXT,  -- the fleet's own
  year @INT64,  -- model year; NULL: unknown
  make TEXT,
  model TEXT,
  engine TEXT,  -- as people say it: 5.1
  engine_serial TEXT,
  gvwr_lb @INT64,  -- rated gross weight in pounds, as the door plate says; NULL: unknown
  has_egr INTEGER NOT NULL CHECK (has_egr IN (0, 1)),
  has_dpf INTEGER NOT NULL CHECK (has_dpf IN (0, 1)),
  emission_altered INTEGER NOT NULL CHECK (emission_altered IN (0, 1)),  -- parts of the emission control are missing or altered
  emission_note TEXT,
  note TEXT,
  active INTEGER NOT NULL CHECK (active IN (0, 1))
) @STRICT;

-- What is sold.
CREATE TABLE services (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,
  sides TEXT NOT NULL,  -- fuel, intake or both
  price_minor @INT64 NOT NULL,  -- labour
  planned_minutes @INT64 NOT NULL,
  disposal_minor @INT64 NOT NULL,
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  CHECK (sides IN ('fuel', 'intake', 'both'))
) @STRICT;

-- Versions of procedures. One in use is never edited: a new version is made.
CREATE TABLE procedures (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  family_id @INT64 NOT NULL REFERENCES families (id),
  sides TEXT NOT NULL,  -- fuel, intake or both
  title TEXT NOT NULL,
  number @INT64 NOT NULL,  -- version, from 1 for each family and sides
  state TEXT NOT NULL,  -- draft, in-use or retired
  made_at @INT64 NOT NULL,
  made_by @INT64 REFERENCES staff (id),
  stop_reason TEXT,  -- a stop-use: not to be run, and why
  CHECK (sides IN ('fuel', 'intake', 'both')),
  CHECK (state IN ('draft', 'in-use', 'retired')),
  UNIQUE (family_id, sides, number)
) @STRICT;

-- Work orders, from the first question to the last payment.
CREATE TABLE jobs (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  number @INT64 NOT NULL,
  customer_id @INT64 NOT NULL REFERENCES customers (id),
  vehicle_id @INT64 NOT NULL REFERENCES vehicles (id),
  service_id @INT64 NOT NULL REFERENCES services (id),
  family_id @INT64 REFERENCES families (id),
  procedure_id @INT64 REFERENCES procedures (id),  -- the version it is run by
  status TEXT NOT NULL,
  complaint TEXT,
  codes TEXT,  -- trouble codes, a space between
  po_number TEXT,
  fuel_dose_ml @INT64,  -- as reasoned when quoted; NULL: side not done
  intake_dose_ml @INT64,
  dose_reason TEXT,
  wanted_at @INT64,  -- when the customer would like it
  arrived_at @INT64,
  comeback_of @INT64 REFERENCES jobs (id),
  next_due_on TEXT,
  next_due_metres @INT64,
  next_due_reason TEXT,
  made_at @INT64 NOT NULL,
  note TEXT,
  CHECK (status IN ('quoted', 'booked', 'arrived', 'in-bay', 'done', 'invoiced', 'paid', 'declined', 'cancelled', 'stopped')),
  UNIQUE (number)
) @STRICT;

-- Odometer and hours.
CREATE TABLE meter_readings (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  vehicle_id @INT64 NOT NULL REFERENCES vehicles (id),
  job_id @INT64 REFERENCES jobs (id),
  taken_on TEXT NOT NULL,
  kind TEXT NOT NULL,  -- odometer or hours
  typed @REAL64 NOT NULL,  -- as read
  unit TEXT NOT NULL,  -- mi, km or h
  metres @INT64,  -- odometer in metres since new, meter changes added
  seconds @INT64,  -- engine hours in seconds likewise
  new_meter INTEGER NOT NULL CHECK (new_meter IN (0, 1)),  -- first reading of a new meter: earlier ones no longer count on
  CHECK (kind IN ('odometer', 'hours')),
  CHECK (unit IN ('mi', 'km', 'h'))
) @STRICT;

-- Gaskets, O-rings and filters that a family needs.
CREATE TABLE family_kit (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  family_id @INT64 NOT NULL REFERENCES families (id),
  position @INT64 NOT NULL,
  kind TEXT NOT NULL,  -- gasket, o-ring or filter
  name TEXT NOT NULL,
  quantity @INT64 NOT NULL,
  price_minor @INT64 NOT NULL,  -- each
  CHECK (kind IN ('gasket', 'o-ring', 'filter'))
) @STRICT;

-- How much fluid where the family says nothing.
CREATE TABLE dose_rules (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  side TEXT NOT NULL,
  size_class TEXT NOT NULL,
  dose_ml @INT64 NOT NULL,
  source TEXT NOT NULL,
  CHECK (side IN ('fuel', 'intake')),
  CHECK (size_class IN ('light', 'heavy')),
  UNIQUE (side, size_class)
) @STRICT;

-- Tax by kind of line.
CREATE TABLE tax_rules (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  line_kind TEXT NOT NULL,  -- labour, fluid, kit, disposal or other
  category TEXT NOT NULL,  -- EN 16931: S, Z, E or O
  rate_milli_percent @INT64 NOT NULL,  -- 7250 is 7.25 %
  label TEXT NOT NULL,
  CHECK (line_kind IN ('labour', 'fluid', 'kit', 'disposal', 'other')),
  CHECK (category IN ('S', 'Z', 'E', 'O')),
  UNIQUE (line_kind)
) @STRICT;

-- Phases of a procedure, each with the cautions that stand above its first step.
CREATE TABLE procedure_phases (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  procedure_id @INT64 NOT NULL REFERENCES procedures (id),
  position @INT64 NOT NULL,  -- from 0
  title TEXT NOT NULL,
  cautions TEXT  -- names of cautions, a space between
) @STRICT;

-- Steps: wording is the shop's, act and subject are typed.
CREATE TABLE procedure_steps (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  procedure_id @INT64 NOT NULL REFERENCES procedures (id),
  position @INT64 NOT NULL,  -- from 0, over all phases
  phase @INT64 NOT NULL,  -- position of its phase
  act TEXT NOT NULL,
  subject TEXT NOT NULL,
  name TEXT,  -- which part, line or tool
  place TEXT,  -- where a tool, guard or adapter sits
  side TEXT,
  fluid TEXT,  -- of a fill: the side that the fluid is meant for; NULL: the tank's own
  value @REAL64,  -- SI
  unit TEXT,  -- as typed
  share @REAL64,  -- of the dose, 0 to 1
  minutes @REAL64,
  low_level INTEGER NOT NULL CHECK (low_level IN (0, 1)),
  until_clear INTEGER NOT NULL CHECK (until_clear IN (0, 1)),
  new_gasket INTEGER NOT NULL CHECK (new_gasket IN (0, 1)),
  closes INTEGER NOT NULL CHECK (closes IN (0, 1)),  -- a guard that shuts its opening
  wording TEXT NOT NULL,
  why TEXT,
  UNIQUE (procedure_id, position)
) @STRICT;

-- Kinds of adapter.
CREATE TABLE adapter_types (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  code TEXT NOT NULL,
  name TEXT NOT NULL,
  side TEXT NOT NULL,
  inspect_days @INT64,  -- between inspections; NULL: none
  price_minor @INT64,
  note TEXT,
  CHECK (side IN ('fuel', 'intake')),
  UNIQUE (code)
) @STRICT;

-- The adapters themselves, each with its tag.
CREATE TABLE adapter_items (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  type_id @INT64 NOT NULL REFERENCES adapter_types (id),
  label TEXT NOT NULL,  -- on the tag: V-07/2
  bin TEXT,
  state TEXT NOT NULL,  -- here, inspection or retired; where it is lent or on a job is said by loans and bookings
  inspected_on TEXT,
  condition TEXT,
  CHECK (state IN ('here', 'inspection', 'retired')),
  UNIQUE (label)
) @STRICT;

-- Which adapters fit what; NULL matches all.
CREATE TABLE adapter_fits (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  type_id @INT64 NOT NULL REFERENCES adapter_types (id),
  family_id @INT64 REFERENCES families (id),
  make TEXT,
  model TEXT,
  year_from @INT64,
  year_to @INT64,
  engine TEXT,
  note TEXT
) @STRICT;

-- Adapters out and back.
CREATE TABLE loans (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  item_id @INT64 NOT NULL REFERENCES adapter_items (id),
  job_id @INT64 REFERENCES jobs (id),
  to_kind TEXT NOT NULL,  -- job, colleague or shop
  to_name TEXT NOT NULL,
  phone TEXT,
  out_at @INT64 NOT NULL,
  due_on TEXT,
  out_by @INT64 REFERENCES staff (id),
  back_at @INT64,  -- NULL: still out
  back_by @INT64 REFERENCES staff (id),
  back_condition TEXT,
  CHECK (to_kind IN ('job', 'colleague', 'shop'))
) @STRICT;

-- Cleaning fluids, each for one side only.
CREATE TABLE fluids (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  code TEXT NOT NULL,  -- short: R
  name TEXT NOT NULL,
  side TEXT NOT NULL,
  supplier_id @INT64 REFERENCES suppliers (id),
  price_minor @INT64 NOT NULL,  -- sold, for a litre
  service_level @REAL64 NOT NULL,  -- share of weeks without running out, 0 to 1
  opened_days @INT64,  -- how long an opened container keeps; NULL: until its expiry
  flash_point_c @REAL64,
  boiling_point_c @REAL64,
  density_kg_m3 @REAL64,
  signal_word TEXT,  -- danger or warning
  pictograms TEXT,  -- GHS02 GHS07 …
  h_statements TEXT,  -- H226 H304 …
  p_statements TEXT,
  un_number TEXT,
  sds_on TEXT,  -- date of the safety data sheet
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  CHECK (side IN ('fuel', 'intake')),
  UNIQUE (code)
) @STRICT;

-- How a fluid is bought.
CREATE TABLE fluid_packs (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  fluid_id @INT64 NOT NULL REFERENCES fluids (id),
  ml @INT64 NOT NULL,
  cost_minor @INT64 NOT NULL,  -- bought, each
  CHECK (ml > 0)
) @STRICT;

-- Deliveries of one making.
CREATE TABLE lots (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  fluid_id @INT64 NOT NULL REFERENCES fluids (id),
  code TEXT NOT NULL,  -- the maker's
  expires_on TEXT,
  received_on TEXT NOT NULL,
  cost_minor_per_litre @INT64,
  stop_reason TEXT,  -- a stop-use: not to be used, and why
  UNIQUE (fluid_id, code)
) @STRICT;

-- Opened containers with their own date.
CREATE TABLE containers (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  lot_id @INT64 NOT NULL REFERENCES lots (id),
  label TEXT NOT NULL,
  size_ml @INT64 NOT NULL,
  opened_on TEXT,
  use_by TEXT,  -- of the opened container
  empty INTEGER NOT NULL CHECK (empty IN (0, 1))
) @STRICT;

-- Every mL that came in or went out.
CREATE TABLE stock_moves (
  id @KEY,
  lot_id @INT64 NOT NULL REFERENCES lots (id),
  container_id @INT64 REFERENCES containers (id),
  job_id @INT64 REFERENCES jobs (id),
  kind TEXT NOT NULL,
  ml @INT64 NOT NULL,  -- into stock positive, out of it negative
  reason TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  reverses_id @INT64 REFERENCES stock_moves (id),  -- the posting that this one corrects
  CHECK (kind IN ('delivery', 'use', 'count', 'spill', 'waste', 'return', 'opening', 'correction')),
  CHECK (ml <> 0)
) @STRICT;

-- Carts with two tanks each.
CREATE TABLE machines (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,
  serial TEXT,
  hoses_due_on TEXT,  -- hoses to be replaced
  active INTEGER NOT NULL CHECK (active IN (0, 1))
) @STRICT;

CREATE TABLE tanks (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  machine_id @INT64 NOT NULL REFERENCES machines (id),
  side TEXT NOT NULL,
  capacity_ml @INT64 NOT NULL,
  low_ml @INT64 NOT NULL,  -- what the low-level switch leaves
  CHECK (side IN ('fuel', 'intake')),
  UNIQUE (machine_id, side)
) @STRICT;

-- What each tank holds is its last event.
CREATE TABLE tank_events (
  id @KEY,
  tank_id @INT64 NOT NULL REFERENCES tanks (id),
  kind TEXT NOT NULL,
  ml @INT64 NOT NULL,  -- what is in the tank afterwards
  contents TEXT NOT NULL,  -- unknown, empty, clean, fresh, returned or held
  fluid_id @INT64 REFERENCES fluids (id),
  lot_id @INT64 REFERENCES lots (id),
  job_id @INT64 REFERENCES jobs (id),
  label TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  reverses_id @INT64 REFERENCES tank_events (id),
  CHECK (kind IN ('found', 'fill', 'run', 'drain', 'flush', 'hold', 'correction')),
  CHECK (contents IN ('unknown', 'empty', 'clean', 'fresh', 'returned', 'held')),
  CHECK (ml >= 0)
) @STRICT;

-- A machine's gauge against a reference.
CREATE TABLE gauge_checks (
  id @KEY,
  machine_id @INT64 NOT NULL REFERENCES machines (id),
  gauge TEXT NOT NULL,
  reads_pa @REAL64 NOT NULL,
  reference_pa @REAL64 NOT NULL,
  passed INTEGER NOT NULL CHECK (passed IN (0, 1)),
  next_on TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id)
) @STRICT;

-- Where work is done.
CREATE TABLE bays (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  name TEXT NOT NULL,
  position @INT64 NOT NULL,
  active INTEGER NOT NULL CHECK (active IN (0, 1))
) @STRICT;

-- One bay, machine and technician for one time.
CREATE TABLE bookings (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  bay_id @INT64 REFERENCES bays (id),
  machine_id @INT64 REFERENCES machines (id),
  technician_id @INT64 REFERENCES staff (id),
  starts_at @INT64 NOT NULL,
  ends_at @INT64 NOT NULL,
  state TEXT NOT NULL,  -- planned, kept or dropped
  CHECK (ends_at > starts_at),
  CHECK (state IN ('planned', 'kept', 'dropped'))
) @STRICT;

-- The adapters a booking holds.
CREATE TABLE booking_adapters (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  booking_id @INT64 NOT NULL REFERENCES bookings (id),
  item_id @INT64 NOT NULL REFERENCES adapter_items (id)
) @STRICT;

-- What a job charges, line by line.
CREATE TABLE job_lines (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  position @INT64 NOT NULL,
  kind TEXT NOT NULL,
  text TEXT NOT NULL,
  quantity_milli @INT64 NOT NULL,  -- thousandths of the unit
  unit TEXT NOT NULL,
  unit_price_minor @INT64 NOT NULL,
  fluid_id @INT64 REFERENCES fluids (id),
  state TEXT NOT NULL,  -- offered, authorised or declined
  declined_reason TEXT,
  CHECK (kind IN ('labour', 'fluid', 'kit', 'disposal', 'discount', 'other')),
  CHECK (state IN ('offered', 'authorised', 'declined'))
) @STRICT;

-- The way a job has gone.
CREATE TABLE job_status (
  id @KEY,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  status TEXT NOT NULL,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  note TEXT
) @STRICT;

-- Written estimates as they were given.
CREATE TABLE estimates (
  id @KEY,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  number @INT64 NOT NULL,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  net_minor @INT64 NOT NULL,
  tax_minor @INT64 NOT NULL,
  total_minor @INT64 NOT NULL,
  valid_until TEXT,
  text TEXT NOT NULL,  -- the lines as they were given
  UNIQUE (number)
) @STRICT;

-- Who allowed what, when and how.
CREATE TABLE authorisations (
  id @KEY,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  estimate_id @INT64 REFERENCES estimates (id),
  by_name TEXT NOT NULL,  -- who gave their word
  how TEXT NOT NULL,
  amount_minor @INT64 NOT NULL,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  note TEXT,
  CHECK (how IN ('in-person', 'phone', 'email', 'text', 'signed'))
) @STRICT;

-- A procedure carried out on a job.
CREATE TABLE runs (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  procedure_id @INT64 NOT NULL REFERENCES procedures (id),
  machine_id @INT64 NOT NULL REFERENCES machines (id),
  technician_id @INT64 REFERENCES staff (id),
  began_at @INT64 NOT NULL,
  ended_at @INT64,
  outcome TEXT,  -- finished or released; NULL: going on
  signature TEXT,
  tag TEXT,  -- what the tag says of a vehicle released in pieces
  fuel_lot_id @INT64 REFERENCES lots (id),
  intake_lot_id @INT64 REFERENCES lots (id),
  start_tanks TEXT NOT NULL,  -- both tanks at the start, a line each: side contents mL lot capacity
  basis TEXT NOT NULL,  -- procedure and family facts as they were when it began
  CHECK (outcome IS NULL OR outcome IN ('finished', 'released'))
) @STRICT;

-- Every confirmed step, value, timer and event, as it happens.
CREATE TABLE run_events (
  id @KEY,
  run_id @INT64 NOT NULL REFERENCES runs (id),
  seq @INT64 NOT NULL,  -- from 1
  kind TEXT NOT NULL,
  at @INT64 NOT NULL,  -- when stored
  done_at @INT64 NOT NULL,  -- when done: earlier where stamped late
  step @INT64 NOT NULL,  -- position in the procedure, of the phase for cautions; -1: none
  happening TEXT,
  value @REAL64,  -- SI
  ml @INT64 NOT NULL,  -- -1: none
  lot_id @INT64 REFERENCES lots (id),
  fluid TEXT,  -- the side that the lot's fluid is meant for
  text TEXT,  -- reason; the step line of an act off the list
  staff_id @INT64 REFERENCES staff (id),
  UNIQUE (run_id, seq)
) @STRICT;

-- Before and after, each with its condition.
CREATE TABLE readings (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  stage TEXT NOT NULL,  -- before or after
  kind TEXT NOT NULL,
  value @REAL64 NOT NULL,  -- SI
  typed TEXT,  -- as typed
  unit TEXT NOT NULL,
  instrument TEXT,
  tolerance @REAL64,  -- of the instrument, SI; NULL: the kind's usual
  rpm @REAL64,
  load_percent @REAL64,
  coolant_c @REAL64,
  egr_state TEXT,
  regeneration INTEGER NOT NULL CHECK (regeneration IN (0, 1)),
  barometer_pa @REAL64,
  ambient_c @REAL64,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  CHECK (stage IN ('before', 'after'))
) @STRICT;

-- Pictures before and after.
CREATE TABLE photos (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  stage TEXT NOT NULL,
  angle TEXT NOT NULL,  -- what it shows: pairs have the same
  width @INT64 NOT NULL,
  height @INT64 NOT NULL,
  jpeg @BYTES NOT NULL,  -- re-encoded by us
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  CHECK (stage IN ('before', 'after'))
) @STRICT;

-- Invoices and credit notes.
CREATE TABLE invoices (
  id @KEY,
  number @INT64 NOT NULL,  -- without gaps
  kind TEXT NOT NULL,
  job_id @INT64 REFERENCES jobs (id),
  customer_id @INT64 NOT NULL REFERENCES customers (id),
  issued_on TEXT NOT NULL,
  due_on TEXT NOT NULL,
  currency TEXT NOT NULL,
  bill_to TEXT NOT NULL,  -- name and address as they were
  vehicle TEXT,  -- as it was described
  po_number TEXT,
  net_minor @INT64 NOT NULL,
  tax_minor @INT64 NOT NULL,
  total_minor @INT64 NOT NULL,  -- negative on a credit note
  credits_id @INT64 REFERENCES invoices (id),
  note TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  CHECK (kind IN ('invoice', 'credit')),
  UNIQUE (number)
) @STRICT;

-- Frozen lines.
CREATE TABLE invoice_lines (
  id @KEY,
  invoice_id @INT64 NOT NULL REFERENCES invoices (id),
  position @INT64 NOT NULL,
  kind TEXT NOT NULL,
  text TEXT NOT NULL,
  quantity_milli @INT64 NOT NULL,
  unit TEXT NOT NULL,
  unit_price_minor @INT64 NOT NULL,
  net_minor @INT64 NOT NULL,
  category TEXT NOT NULL,
  rate_milli_percent @INT64 NOT NULL
) @STRICT;

-- Tax by category, frozen.
CREATE TABLE invoice_taxes (
  id @KEY,
  invoice_id @INT64 NOT NULL REFERENCES invoices (id),
  category TEXT NOT NULL,
  rate_milli_percent @INT64 NOT NULL,
  taxable_minor @INT64 NOT NULL,
  tax_minor @INT64 NOT NULL,
  label TEXT
) @STRICT;

-- Money in, and back.
CREATE TABLE payments (
  id @KEY,
  invoice_id @INT64 NOT NULL REFERENCES invoices (id),
  customer_id @INT64 NOT NULL REFERENCES customers (id),
  amount_minor @INT64 NOT NULL,  -- negative where money goes back
  method TEXT NOT NULL,
  reference TEXT,
  received_on TEXT NOT NULL,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  reverses_id @INT64 REFERENCES payments (id),
  CHECK (method IN ('cash', 'card', 'transfer', 'cheque', 'credit-note')),
  CHECK (amount_minor <> 0)
) @STRICT;

-- Who changed what from what to what.
CREATE TABLE changes (
  id @KEY,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  record TEXT NOT NULL,  -- the table
  row_id @INT64 NOT NULL,
  field TEXT NOT NULL,
  was TEXT,
  now TEXT
) @STRICT;

CREATE INDEX customers_by_name_id ON customers (name, id);
CREATE INDEX customer_phones_by_customer_id ON customer_phones (customer_id);
CREATE INDEX customer_addresses_by_customer_id ON customer_addresses (customer_id);
CREATE INDEX vehicles_by_customer_id ON vehicles (customer_id);
CREATE INDEX vehicles_by_vin ON vehicles (vin);
CREATE INDEX vehicles_by_sort_id ON vehicles (
  (COALESCE (make, '') || ' ' || COALESCE (model, '') || ' ' || COALESCE (unit_number, '')), id);
CREATE INDEX vehicles_by_family_id ON vehicles (family_id);
CREATE INDEX meter_readings_by_vehicle_id_taken_on ON meter_readings (vehicle_id, taken_on);
CREATE INDEX family_kit_by_family_id ON family_kit (family_id);
CREATE INDEX procedure_phases_by_procedure_id_position ON procedure_phases (procedure_id, position);
CREATE INDEX adapter_items_by_type_id ON adapter_items (type_id);
CREATE INDEX adapter_fits_by_type_id ON adapter_fits (type_id);
CREATE INDEX adapter_fits_by_family_id ON adapter_fits (family_id);
CREATE INDEX loans_by_item_id ON loans (item_id);
CREATE INDEX loans_by_job_id ON loans (job_id);
CREATE INDEX loans_by_back_at ON loans (back_at);
CREATE INDEX fluid_packs_by_fluid_id ON fluid_packs (fluid_id);
CREATE INDEX lots_by_fluid_id ON lots (fluid_id);
CREATE INDEX containers_by_lot_id ON containers (lot_id);
CREATE INDEX stock_moves_by_lot_id ON stock_moves (lot_id);
CREATE INDEX stock_moves_by_job_id ON stock_moves (job_id);
CREATE INDEX tank_events_by_tank_id_id ON tank_events (tank_id, id);
CREATE INDEX tank_events_by_job_id ON tank_events (job_id);
CREATE INDEX tank_events_by_lot_id ON tank_events (lot_id);
CREATE INDEX gauge_checks_by_machine_id ON gauge_checks (machine_id);
CREATE INDEX bookings_by_job_id ON bookings (job_id);
CREATE INDEX bookings_by_starts_at ON bookings (starts_at);
CREATE INDEX booking_adapters_by_booking_id ON booking_adapters (booking_id);
CREATE INDEX booking_adapters_by_item_id ON booking_adapters (item_id);
CREATE INDEX jobs_by_customer_id ON jobs (customer_id);
CREATE INDEX jobs_by_vehicle_id ON jobs (vehicle_id);
CREATE INDEX jobs_by_status ON jobs (status);
CREATE INDEX jobs_by_next_due_on ON jobs (next_due_on);
CREATE INDEX jobs_by_comeback_of ON jobs (comeback_of);
CREATE INDEX job_lines_by_job_id_position ON job_lines (job_id, position);
CREATE INDEX job_status_by_job_id ON job_status (job_id);
CREATE INDEX estimates_by_job_id ON estimates (job_id);
CREATE INDEX authorisations_by_job_id ON authorisations (job_id);
CREATE INDEX runs_by_job_id ON runs (job_id);
CREATE INDEX runs_by_outcome ON runs (outcome);
CREATE INDEX readings_by_job_id ON readings (job_id);
CREATE INDEX photos_by_job_id ON photos (job_id);
CREATE INDEX invoices_by_job_id ON invoices (job_id);
CREATE INDEX invoices_by_due_on ON invoices (due_on);
CREATE INDEX invoices_by_customer_id ON invoices (customer_id);
CREATE INDEX invoices_by_credits_id ON invoices (credits_id);
CREATE INDEX invoice_lines_by_invoice_id ON invoice_lines (invoice_id);
CREATE INDEX invoice_taxes_by_invoice_id ON invoice_taxes (invoice_id);
CREATE INDEX payments_by_invoice_id ON payments (invoice_id);
CREATE INDEX payments_by_customer_id ON payments (customer_id);
CREATE INDEX changes_by_record_row_id ON changes (record, row_id);
