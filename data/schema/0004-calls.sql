-- SPDX-License-Identifier: GPL-3.0-or-later
-- What was said on the telephone.

-- Calls about something that waits for a word; the newest about each thing counts.
CREATE TABLE calls (
  id @KEY,
  about TEXT NOT NULL,  -- which kind of thing
  record @INT64 NOT NULL,  -- which one of them
  customer_id @INT64 REFERENCES customers (id),  -- NULL: another shop, or a colleague
  spoke_with TEXT,  -- NULL: nobody answered
  said TEXT NOT NULL,
  again_on TEXT,  -- when to call again; NULL: no day agreed
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  reverses_id @INT64 REFERENCES calls (id),  -- a note that was taken back
  CHECK (about IN ('job', 'loan', 'invoice', 'vehicle'))
) @STRICT;
CREATE INDEX calls_by_about_record ON calls (about, record, id);
CREATE INDEX calls_by_customer_id ON calls (customer_id, id);
