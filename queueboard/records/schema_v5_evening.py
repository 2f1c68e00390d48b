"""Schema version 5, the evening: what was looked at, counted and written down when a day was closed."""

SQL = """
CREATE TABLE day_close (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  day TEXT NOT NULL UNIQUE CHECK (length(day) = 10),
  not_done INTEGER NOT NULL CHECK (not_done BETWEEN 0 AND 999999),
  note TEXT NOT NULL CHECK (length(note) <= 500),
  closed_us INTEGER NOT NULL,
  closed_by TEXT NOT NULL
) STRICT;

CREATE TABLE till_count (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  way TEXT NOT NULL CHECK (length(way) BETWEEN 1 AND 20),
  should_cents INTEGER NOT NULL,
  counted_cents INTEGER NOT NULL CHECK (counted_cents BETWEEN 0 AND 9999999),
  counted_us INTEGER NOT NULL,
  counted_by TEXT NOT NULL,
  UNIQUE (day, way)
) STRICT;

CREATE TABLE dust_look (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  after_id INTEGER UNIQUE REFERENCES dust_look(id) CHECK (after_id < id),
  looked_us INTEGER NOT NULL,
  looked_by TEXT NOT NULL
) STRICT;
CREATE INDEX dust_look_day ON dust_look(day);

CREATE INDEX payment_at ON payment(at_us);
CREATE INDEX promise_told ON promise(told_us);
"""
"""Days are those of the shop's zone. day_close.not_done counts the boxes that were due and not done when it was closed,
since nobody can tell it later. till_count.should_cents is what should have been there when it was counted. A dust_look
without after_id is the tray emptied or wetted and looked at; one with it is the second look at that one.
"""
