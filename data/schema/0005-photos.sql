-- SPDX-License-Identifier: GPL-3.0-or-later
-- Several pictures of one place: one of each stage is shown and printed.

ALTER TABLE photos ADD COLUMN chosen INTEGER NOT NULL DEFAULT 1 CHECK (chosen IN (0, 1));
-- Where there were several, it was the first one.
UPDATE photos SET chosen = 0 WHERE id NOT IN
  (SELECT min (id) FROM photos GROUP BY job_id, angle, stage);
