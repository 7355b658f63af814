-- SPDX-License-Identifier: GPL-3.0-or-later
-- What is looked at before the work, and what was typed but not carried out yet.

-- What was found before the work, check by check; the newest answer of each counts.
CREATE TABLE prechecks (
  id @KEY,
  job_id @INT64 NOT NULL REFERENCES jobs (id),
  kind TEXT NOT NULL,  -- oil, coolant, …
  answer TEXT NOT NULL,
  overridden INTEGER NOT NULL CHECK (overridden IN (0, 1)),  -- it may run in spite of a no
  reason TEXT,
  at @INT64 NOT NULL,
  staff_id @INT64 REFERENCES staff (id),
  CHECK (answer IN ('yes', 'no', 'not-applicable')),
  CHECK (overridden = 0 OR (answer = 'no' AND reason IS NOT NULL))
) @STRICT;
CREATE INDEX prechecks_by_job_id ON prechecks (job_id, kind);

-- Kept for the person who typed it until it is carried out or thrown away; no record of the
-- shop's, so that the log of changes says nothing of it.
CREATE TABLE drafts (
  id @KEY,
  version @INT64 NOT NULL DEFAULT 1,
  staff_id @INT64 NOT NULL REFERENCES staff (id),
  place TEXT NOT NULL,
  record @INT64 NOT NULL,  -- 0: something new
  text TEXT NOT NULL,  -- JSON, the page's own
  at @INT64 NOT NULL,
  UNIQUE (staff_id, place, record)
) @STRICT;
