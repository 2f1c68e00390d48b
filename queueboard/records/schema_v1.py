"""Schema version 1 as SQL. Later versions are further files; this one never changes once shops use it."""

APPLICATION_ID = 0x51627264
"""Stands at byte 68 of every shop file."""

SQL = """
CREATE TABLE shop (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  salt TEXT NOT NULL CHECK (length(salt) = 32),
  created_us INTEGER NOT NULL
) STRICT;

CREATE TABLE settings (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  text TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 200000),
  taken_us INTEGER NOT NULL
) STRICT;

CREATE TABLE closed_day (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  settings_id INTEGER NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  name TEXT NOT NULL
) STRICT;

CREATE TABLE customer (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 300),
  phone TEXT NOT NULL CHECK (length(phone) <= 60),
  town TEXT NOT NULL CHECK (length(town) <= 120),
  address TEXT NOT NULL CHECK (length(address) <= 500),
  notes TEXT NOT NULL CHECK (length(notes) <= 2000),
  merged_into INTEGER REFERENCES customer(id)
) STRICT;

CREATE TABLE box (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9999),
  customer_id INTEGER NOT NULL REFERENCES customer(id),
  came_by TEXT NOT NULL,
  goes_by TEXT NOT NULL,
  counted INTEGER NOT NULL CHECK (counted BETWEEN 0 AND 999),
  note_says INTEGER CHECK (note_says BETWEEN 0 AND 9999),
  received_us INTEGER NOT NULL,
  opened INTEGER NOT NULL CHECK (opened IN (0, 1)),
  packing TEXT,
  carrier_days INTEGER NOT NULL CHECK (carrier_days BETWEEN 0 AND 60),
  rush INTEGER NOT NULL CHECK (rush IN (0, 1)),
  this_next INTEGER NOT NULL CHECK (this_next IN (0, 1)),
  never_slip INTEGER NOT NULL CHECK (never_slip IN (0, 1)),
  waiting_for TEXT,
  waiting_since_us INTEGER,
  note TEXT NOT NULL CHECK (length(note) <= 2000),
  closed_us INTEGER
) STRICT;
CREATE UNIQUE INDEX box_open_number ON box(number) WHERE closed_us IS NULL;
CREATE INDEX box_customer ON box(customer_id);

CREATE TABLE knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999),
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 60),
  edge TEXT NOT NULL,
  length_mm INTEGER CHECK (length_mm BETWEEN 20 AND 900),
  condition TEXT NOT NULL,
  place TEXT NOT NULL,
  mark TEXT NOT NULL CHECK (length(mark) <= 200),
  wish TEXT NOT NULL CHECK (length(wish) <= 200),
  note TEXT NOT NULL CHECK (length(note) <= 2000),
  rework INTEGER NOT NULL CHECK (rework >= 0),
  declined TEXT,
  waiting_for TEXT,
  waiting_since_us INTEGER,
  price_cents INTEGER NOT NULL CHECK (price_cents BETWEEN 0 AND 10000000),
  looking_for INTEGER NOT NULL CHECK (looking_for IN (0, 1)),
  moved_us INTEGER NOT NULL,
  moved_by TEXT NOT NULL,
  UNIQUE (box_id, number)
) STRICT;

CREATE TABLE thing (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  state TEXT NOT NULL
) STRICT;
CREATE INDEX thing_box ON thing(box_id);

CREATE TABLE promise (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  kind TEXT NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  at TEXT CHECK (length(at) = 5),
  told_to TEXT NOT NULL CHECK (length(told_to) <= 300),
  told_us INTEGER NOT NULL,
  told_by TEXT NOT NULL,
  reason TEXT NOT NULL CHECK (length(reason) <= 500)
) STRICT;
CREATE INDEX promise_box ON promise(box_id);

CREATE TABLE label (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  owner TEXT NOT NULL,
  state TEXT NOT NULL,
  carrier TEXT NOT NULL CHECK (length(carrier) <= 60),
  expires_on TEXT CHECK (length(expires_on) = 10),
  name_on TEXT NOT NULL CHECK (length(name_on) <= 300)
) STRICT;
CREATE INDEX label_box ON label(box_id);

CREATE TABLE payment (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  cents INTEGER NOT NULL CHECK (cents BETWEEN 1 AND 10000000),
  way TEXT NOT NULL,
  at_us INTEGER NOT NULL,
  by TEXT NOT NULL
) STRICT;
CREATE INDEX payment_box ON payment(box_id);

CREATE TABLE close_out (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  started_us INTEGER NOT NULL,
  counted INTEGER CHECK (counted BETWEEN 0 AND 999),
  ticking INTEGER NOT NULL CHECK (ticking IN (0, 1)),
  ticks_done INTEGER NOT NULL CHECK (ticks_done IN (0, 1)),
  things_done INTEGER NOT NULL CHECK (things_done IN (0, 1)),
  missing_reason TEXT NOT NULL CHECK (length(missing_reason) <= 500),
  names_ok INTEGER NOT NULL CHECK (names_ok IN (0, 1)),
  label_ok INTEGER NOT NULL CHECK (label_ok IN (0, 1)),
  handed_to TEXT NOT NULL CHECK (length(handed_to) <= 300),
  settled TEXT,
  settled_why TEXT NOT NULL CHECK (length(settled_why) <= 500),
  finished_us INTEGER
) STRICT;
CREATE UNIQUE INDEX close_out_open ON close_out(box_id) WHERE finished_us IS NULL;

CREATE TABLE tick (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  close_out_id INTEGER NOT NULL REFERENCES close_out(id),
  knife_id INTEGER REFERENCES knife(id),
  thing_id INTEGER REFERENCES thing(id),
  CHECK ((knife_id IS NULL) <> (thing_id IS NULL)),
  UNIQUE (close_out_id, knife_id),
  UNIQUE (close_out_id, thing_id)
) STRICT;

CREATE TABLE day_order (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  knife_ids TEXT NOT NULL
) STRICT;

CREATE TABLE history (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  group_id TEXT NOT NULL CHECK (length(group_id) BETWEEN 8 AND 64),
  line INTEGER NOT NULL CHECK (line >= 0),
  at_us INTEGER NOT NULL,
  by TEXT NOT NULL CHECK (length(by) BETWEEN 1 AND 8),
  operation TEXT NOT NULL,
  about TEXT,
  undoes TEXT,
  reason TEXT,
  entity TEXT NOT NULL,
  entity_id INTEGER NOT NULL,
  before TEXT,
  after TEXT,
  previous TEXT NOT NULL CHECK (length(previous) = 64),
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  UNIQUE (group_id, line)
) STRICT;
CREATE INDEX history_entity ON history(entity, entity_id, id);
CREATE INDEX history_actions ON history(by, id) WHERE line = 0;
CREATE INDEX history_undoes ON history(undoes) WHERE undoes IS NOT NULL;

CREATE TABLE personal (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  history_id INTEGER NOT NULL REFERENCES history(id),
  side TEXT NOT NULL CHECK (side IN ('before', 'after', 'reason')),
  field TEXT NOT NULL,
  text TEXT NOT NULL
) STRICT;
CREATE INDEX personal_history ON personal(history_id);

CREATE TRIGGER history_no_update BEFORE UPDATE ON history
BEGIN SELECT RAISE(ABORT, 'history is only ever added to'); END;
CREATE TRIGGER history_no_delete BEFORE DELETE ON history
BEGIN SELECT RAISE(ABORT, 'history is only ever added to'); END;
CREATE TRIGGER history_no_replace BEFORE INSERT ON history
WHEN EXISTS (SELECT 1 FROM history WHERE id = new.id OR (group_id = new.group_id AND line = new.line))
BEGIN SELECT RAISE(ABORT, 'history is only ever added to'); END;
"""
