"""Schema version 2: runs at the bench and their time, boxes that are announced, what was said of a box each morning."""

SQL = """
ALTER TABLE box ADD COLUMN announced_us INTEGER;
ALTER TABLE box ADD COLUMN expected_on TEXT CHECK (length(expected_on) = 10);
ALTER TABLE box ADD COLUMN expected_knives INTEGER CHECK (expected_knives BETWEEN 1 AND 999);

CREATE TABLE bench_run (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  process TEXT NOT NULL CHECK (length(process) BETWEEN 1 AND 60),
  started_us INTEGER NOT NULL,
  started_by TEXT NOT NULL,
  nominal_seconds INTEGER NOT NULL CHECK (nominal_seconds >= 0),
  planned_seconds INTEGER NOT NULL CHECK (planned_seconds >= 0),
  set_up_seconds INTEGER NOT NULL CHECK (set_up_seconds BETWEEN 0 AND 14400),
  paused_us INTEGER,
  paused_total_us INTEGER NOT NULL CHECK (paused_total_us >= 0),
  finished_us INTEGER,
  timed INTEGER NOT NULL CHECK (timed IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX bench_run_going_on ON bench_run(started_by) WHERE finished_us IS NULL AND paused_us IS NULL;
CREATE INDEX bench_run_finished ON bench_run(finished_us);
CREATE INDEX bench_run_process ON bench_run(process, finished_us);

CREATE TABLE run_knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  run_id INTEGER NOT NULL REFERENCES bench_run(id),
  knife_id INTEGER NOT NULL REFERENCES knife(id),
  nominal_seconds INTEGER NOT NULL CHECK (nominal_seconds >= 0),
  UNIQUE (run_id, knife_id)
) STRICT;
CREATE INDEX run_knife_knife ON run_knife(knife_id);

CREATE TABLE said (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  box_id INTEGER NOT NULL,
  due_us INTEGER NOT NULL,
  late_permille INTEGER NOT NULL CHECK (late_permille BETWEEN 0 AND 1000),
  UNIQUE (day, box_id)
) STRICT;

CREATE INDEX history_work ON history(at_us) WHERE entity IN ('box', 'knife');
"""
"""box.announced_us is set while a box is announced and not in the door.

bench_run.timed is 0 when the run was done without timing or its time was thrown away; nominal_seconds are by the
starter minutes, planned_seconds by the learned ones, both with the set-up. said rests on no box, so that the receiving
of a box can still be taken back after something was said of it.
"""
