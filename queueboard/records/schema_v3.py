"""Schema version 3: marked spots and their readings, tests, the tester's studies, belts, and belt trials."""

SQL = """
ALTER TABLE customer ADD COLUMN proof_card INTEGER NOT NULL DEFAULT 0 CHECK (proof_card IN (0, 1));
ALTER TABLE box ADD COLUMN complaint INTEGER NOT NULL DEFAULT 0 CHECK (complaint IN (0, 1));
ALTER TABLE knife ADD COLUMN gauge TEXT;

CREATE TABLE spot (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  knife_id INTEGER NOT NULL REFERENCES knife(id),
  place INTEGER NOT NULL CHECK (place BETWEEN 1 AND 20),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 20),
  from_heel_mm INTEGER CHECK (from_heel_mm BETWEEN 0 AND 2000),
  tooth INTEGER CHECK (tooth BETWEEN 1 AND 999),
  UNIQUE (knife_id, place)
) STRICT;

CREATE TABLE reading (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  spot_id INTEGER NOT NULL REFERENCES spot(id),
  stage TEXT NOT NULL CHECK (length(stage) BETWEEN 1 AND 20),
  belt TEXT NOT NULL CHECK (length(belt) <= 60),
  deburred INTEGER NOT NULL CHECK (deburred IN (0, 1)),
  force_gf INTEGER NOT NULL CHECK (force_gf BETWEEN 1 AND 5000),
  read_us INTEGER NOT NULL,
  read_by TEXT NOT NULL,
  struck_us INTEGER,
  struck_why TEXT NOT NULL
) STRICT;
CREATE INDEX reading_spot ON reading(spot_id);

CREATE TABLE edge_test (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  knife_id INTEGER NOT NULL REFERENCES knife(id),
  way TEXT NOT NULL CHECK (length(way) BETWEEN 1 AND 20),
  ok INTEGER NOT NULL CHECK (ok IN (0, 1)),
  belt TEXT NOT NULL CHECK (length(belt) <= 60),
  tested_us INTEGER NOT NULL,
  tested_by TEXT NOT NULL
) STRICT;
CREATE INDEX edge_test_knife ON edge_test(knife_id, id);
CREATE INDEX edge_test_tested ON edge_test(tested_us);

CREATE TABLE second_look (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  knife_id INTEGER NOT NULL REFERENCES knife(id),
  choice TEXT NOT NULL CHECK (length(choice) BETWEEN 1 AND 40),
  why TEXT NOT NULL,
  chosen_us INTEGER NOT NULL,
  chosen_by TEXT NOT NULL
) STRICT;
CREATE INDEX second_look_knife ON second_look(knife_id);

CREATE TABLE study (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  changed TEXT NOT NULL,
  knives INTEGER NOT NULL DEFAULT 10 CHECK (knives BETWEEN 5 AND 99),
  begun_us INTEGER NOT NULL,
  begun_by TEXT NOT NULL,
  finished_us INTEGER
) STRICT;

CREATE TABLE study_reading (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  study_id INTEGER NOT NULL REFERENCES study(id),
  knife INTEGER NOT NULL CHECK (knife BETWEEN 1 AND 99),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9),
  force_gf INTEGER NOT NULL CHECK (force_gf BETWEEN 1 AND 5000),
  UNIQUE (study_id, knife, number)
) STRICT;

CREATE TABLE belt (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  process TEXT NOT NULL CHECK (length(process) BETWEEN 1 AND 60),
  label TEXT NOT NULL CHECK (length(label) BETWEEN 1 AND 60),
  step TEXT NOT NULL DEFAULT '' CHECK (length(step) <= 60),
  was_belt_id INTEGER REFERENCES belt(id),
  fitted_us INTEGER NOT NULL,
  fitted_by TEXT NOT NULL,
  removed_us INTEGER,
  removed_for TEXT CHECK (length(removed_for) BETWEEN 1 AND 20),
  removed_why TEXT NOT NULL
) STRICT;
CREATE INDEX belt_process ON belt(process, removed_us);

CREATE TABLE belt_spares (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  label TEXT NOT NULL UNIQUE CHECK (length(label) BETWEEN 1 AND 60),
  spares INTEGER NOT NULL CHECK (spares BETWEEN 0 AND 9999)
) STRICT;

CREATE TABLE stable_period (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  process TEXT NOT NULL UNIQUE CHECK (length(process) BETWEEN 1 AND 60),
  first_us INTEGER NOT NULL,
  last_us INTEGER NOT NULL CHECK (last_us >= first_us)
) STRICT;

CREATE TABLE trial (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 60),
  process TEXT NOT NULL CHECK (length(process) BETWEEN 1 AND 60),
  belt TEXT NOT NULL CHECK (length(belt) BETWEEN 1 AND 60),
  fall_tenths INTEGER NOT NULL CHECK (fall_tenths BETWEEN 0 AND 100),
  or_halves_not_ok INTEGER NOT NULL CHECK (or_halves_not_ok IN (0, 1)),
  each INTEGER NOT NULL CHECK (each BETWEEN 20 AND 500),
  draw TEXT NOT NULL CHECK (length(draw) BETWEEN 1 AND 20),
  seed INTEGER NOT NULL,
  begun_us INTEGER NOT NULL,
  begun_by TEXT NOT NULL,
  ended_us INTEGER
) STRICT;
CREATE UNIQUE INDEX trial_going_on ON trial(kind) WHERE ended_us IS NULL;

CREATE TABLE trial_knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  trial_id INTEGER NOT NULL REFERENCES trial(id),
  knife_id INTEGER NOT NULL REFERENCES knife(id),
  place INTEGER NOT NULL CHECK (place >= 0),
  half TEXT NOT NULL CHECK (length(half) BETWEEN 1 AND 20),
  UNIQUE (trial_id, knife_id)
) STRICT;
CREATE INDEX trial_knife_knife ON trial_knife(knife_id);
"""
"""knife.gauge is why the gauge is asked for, fixed when the knife comes to the bench and NULL when it is not: a sample
that was drawn again at each look would move with every knife that leaves.

Two knives of a trial may stand at one place: a draw that was undone and done again keeps the half it had.
reading.belt names the belt of a reading between belts and is empty otherwise. A reading that was wrong is struck, with
the reason, and another is written; no force is ever changed.

belt.step is the step that it does, empty where that is its own label. belt.removed_for is the chosen reason ("moved"
for finer duty: a new row begins, whose was_belt_id names this one), removed_why the person's own words.
trial.fall_tenths are tenths of the tester's wobble.
"""
