"""Schema version 5, swap sets of kitchens and tags printed before a market day."""

SQL = """
CREATE TABLE swap_set (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  customer_id INTEGER NOT NULL REFERENCES customer(id),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 20)
) STRICT;

CREATE TABLE swap_kind (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  set_id INTEGER NOT NULL REFERENCES swap_set(id),
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 60),
  owned INTEGER NOT NULL CHECK (owned BETWEEN 1 AND 999),
  kitchen INTEGER NOT NULL CHECK (kitchen >= 0),
  here INTEGER NOT NULL CHECK (here >= 0),
  missing INTEGER NOT NULL CHECK (missing >= 0),
  CHECK (owned = kitchen + here + missing),
  UNIQUE (set_id, kind)
) STRICT;

CREATE TABLE swap_round (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  customer_id INTEGER NOT NULL REFERENCES customer(id),
  brought_id INTEGER REFERENCES swap_set(id),
  taken_id INTEGER REFERENCES swap_set(id),
  box_id INTEGER REFERENCES box(id),
  at_us INTEGER NOT NULL
) STRICT;

CREATE TABLE swap_missing (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  kind_id INTEGER NOT NULL REFERENCES swap_kind(id),
  knives INTEGER NOT NULL CHECK (knives BETWEEN 1 AND 999),
  since_us INTEGER NOT NULL,
  charged INTEGER NOT NULL CHECK (charged IN (0, 1))
) STRICT;

CREATE TABLE printed_tags (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  market_on TEXT NOT NULL CHECK (length(market_on) = 10),
  first INTEGER NOT NULL CHECK (first BETWEEN 1 AND 99999),
  last INTEGER NOT NULL CHECK (last BETWEEN first AND 99999)
) STRICT;

CREATE TABLE market_entry (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  printed_id INTEGER NOT NULL REFERENCES printed_tags(id),
  tag INTEGER NOT NULL CHECK (tag BETWEEN 1 AND 99999),
  box_id INTEGER NOT NULL REFERENCES box(id)
) STRICT;
"""
"""swap_kind says where the knives of a set are, each in exactly one place; here is dull as long as the box of its round
has it unfinished, else clean. A tag that stands in market_entry twice was given out twice: the second box has a number
of its own.
"""
