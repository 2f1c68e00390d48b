"""Schema version 5, swap sets of kitchens: what is in them, the rounds, what was missing, checks before a round."""

SQL = """
CREATE TABLE swap_set (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  customer_id INTEGER NOT NULL REFERENCES customer(id),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 20),
  every_days INTEGER NOT NULL CHECK (every_days BETWEEN 1 AND 60)
) STRICT;
CREATE INDEX swap_set_customer ON swap_set(customer_id);

CREATE TABLE swap_kind (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  set_id INTEGER NOT NULL REFERENCES swap_set(id),
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 300),
  knives INTEGER NOT NULL CHECK (knives BETWEEN 1 AND 999),
  UNIQUE (set_id, kind)
) STRICT;

CREATE TABLE swap_round (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  sharp_set_id INTEGER REFERENCES swap_set(id),
  dull_set_id INTEGER REFERENCES swap_set(id),
  box_id INTEGER UNIQUE REFERENCES box(id),
  noted_us INTEGER NOT NULL,
  noted_by TEXT NOT NULL CHECK (length(noted_by) BETWEEN 1 AND 20),
  CHECK (sharp_set_id IS NOT NULL OR dull_set_id IS NOT NULL),
  CHECK ((dull_set_id IS NULL) = (box_id IS NULL))
) STRICT;
CREATE INDEX swap_round_sharp ON swap_round(sharp_set_id);
CREATE INDEX swap_round_dull ON swap_round(dull_set_id);

CREATE TABLE swap_missing (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  round_id INTEGER NOT NULL REFERENCES swap_round(id),
  set_id INTEGER NOT NULL REFERENCES swap_set(id),
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 300),
  missed_us INTEGER NOT NULL,
  found_us INTEGER CHECK (found_us >= missed_us),
  charge_id INTEGER CHECK (charge_id >= 1)
) STRICT;
CREATE INDEX swap_missing_set ON swap_missing(set_id);

CREATE TABLE swap_check (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  set_id INTEGER NOT NULL REFERENCES swap_set(id),
  for_day TEXT NOT NULL CHECK (length(for_day) = 10),
  missing INTEGER NOT NULL CHECK (missing BETWEEN 0 AND 99999),
  not_clean INTEGER NOT NULL CHECK (not_clean BETWEEN 0 AND 99999),
  checked_us INTEGER NOT NULL,
  checked_by TEXT NOT NULL CHECK (length(checked_by) BETWEEN 1 AND 20)
) STRICT;
CREATE INDEX swap_check_set ON swap_check(set_id);
"""
"""A swap_set is a kitchen's, visited every so many days. A swap_round took the sharp set there and brought the
dull one, which is a box of the shop from then on. swap_missing is one knife; charge_id names the charge for it, which
may have been struck since. swap_check says how a set stood when it was looked through for its next round.
"""
