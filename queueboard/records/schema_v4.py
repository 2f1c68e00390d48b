"""Schema version 4: what an inspection found, charges beside a knife's price, parcels, found and moved knives."""

SQL = """
ALTER TABLE knife ADD COLUMN chips INTEGER CHECK (chips BETWEEN 1 AND 99);
ALTER TABLE knife ADD COLUMN chip_um INTEGER CHECK (chip_um BETWEEN 1 AND 50000);
ALTER TABLE knife ADD COLUMN tip_um INTEGER CHECK (tip_um BETWEEN 1 AND 200000);
ALTER TABLE knife ADD COLUMN findings TEXT NOT NULL DEFAULT '' CHECK (length(findings) <= 400);
ALTER TABLE knife ADD COLUMN apart INTEGER NOT NULL DEFAULT 0 CHECK (apart IN (0, 1, 2));
ALTER TABLE knife ADD COLUMN added_us INTEGER;
ALTER TABLE knife ADD COLUMN tax_ppm INTEGER NOT NULL DEFAULT 0 CHECK (tax_ppm BETWEEN 0 AND 1000000);

ALTER TABLE box ADD COLUMN not_above_cents INTEGER CHECK (not_above_cents BETWEEN 0 AND 10000000);
ALTER TABLE box ADD COLUMN packed_g INTEGER CHECK (packed_g BETWEEN 1 AND 200000);
ALTER TABLE box ADD COLUMN parcel_mm TEXT NOT NULL DEFAULT '' CHECK (length(parcel_mm) <= 20);
UPDATE knife SET added_us = (SELECT b.received_us FROM box b WHERE b.id = knife.box_id)
WHERE (SELECT count(*) FROM knife k WHERE k.box_id = knife.box_id AND k.number <= knife.number)
> (SELECT b.counted FROM box b WHERE b.id = knife.box_id);

ALTER TABLE box ADD COLUMN rounding TEXT NOT NULL DEFAULT 'half up' CHECK (length(rounding) BETWEEN 1 AND 20);

ALTER TABLE label ADD COLUMN address_on TEXT NOT NULL DEFAULT '' CHECK (length(address_on) <= 500);
ALTER TABLE label ADD COLUMN note_name TEXT NOT NULL DEFAULT '' CHECK (length(note_name) <= 300);
ALTER TABLE label ADD COLUMN note_address TEXT NOT NULL DEFAULT '' CHECK (length(note_address) <= 500);
ALTER TABLE label ADD COLUMN limit_g INTEGER CHECK (limit_g BETWEEN 1 AND 200000);
ALTER TABLE label ADD COLUMN value_cents INTEGER CHECK (value_cents BETWEEN 0 AND 10000000);
ALTER TABLE label ADD COLUMN price_cents INTEGER CHECK (price_cents BETWEEN 0 AND 10000000);

ALTER TABLE payment ADD COLUMN sort TEXT NOT NULL DEFAULT 'payment' CHECK (length(sort) BETWEEN 1 AND 20);

ALTER TABLE promise ADD COLUMN reckoned TEXT NOT NULL DEFAULT '' CHECK (length(reckoned) <= 300);

CREATE TABLE charge (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  knife_id INTEGER REFERENCES knife(id),
  sort TEXT NOT NULL CHECK (length(sort) BETWEEN 1 AND 20),
  text TEXT NOT NULL CHECK (length(text) <= 120),
  cents INTEGER NOT NULL CHECK (cents BETWEEN -10000000 AND 10000000),
  ppm INTEGER CHECK (ppm BETWEEN 0 AND 2000000),
  tax_ppm INTEGER NOT NULL CHECK (tax_ppm BETWEEN 0 AND 1000000)
) STRICT;
CREATE INDEX charge_box ON charge(box_id);

CREATE TABLE struck_knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  knives INTEGER NOT NULL CHECK (knives BETWEEN 1 AND 999)
) STRICT;
CREATE INDEX struck_knife_box ON struck_knife(box_id);
INSERT INTO struck_knife (row_version, box_id, knives)
SELECT 1, b.id, b.counted - (SELECT count(*) FROM knife k WHERE k.box_id = b.id) FROM box b
WHERE b.counted > (SELECT count(*) FROM knife k WHERE k.box_id = b.id);

CREATE TABLE moved_knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  knife_id INTEGER NOT NULL REFERENCES knife(id),
  from_box_id INTEGER NOT NULL REFERENCES box(id),
  from_number INTEGER NOT NULL CHECK (from_number BETWEEN 1 AND 999),
  to_box_id INTEGER NOT NULL REFERENCES box(id),
  why TEXT NOT NULL CHECK (length(why) BETWEEN 1 AND 500),
  moved_us INTEGER NOT NULL,
  moved_by TEXT NOT NULL
) STRICT;
CREATE INDEX moved_knife_from ON moved_knife(from_box_id);
CREATE INDEX moved_knife_knife ON moved_knife(knife_id);

CREATE TABLE found_knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 60),
  length_mm INTEGER CHECK (length_mm BETWEEN 20 AND 900),
  mark TEXT NOT NULL CHECK (length(mark) <= 200),
  place TEXT NOT NULL CHECK (length(place) BETWEEN 1 AND 200),
  from_box_id INTEGER REFERENCES box(id),
  found_us INTEGER NOT NULL,
  found_by TEXT NOT NULL,
  settled_us INTEGER,
  settled_how TEXT NOT NULL DEFAULT '' CHECK (length(settled_how) <= 500)
) STRICT;

CREATE TABLE restored (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  from_file TEXT NOT NULL CHECK (length(from_file) BETWEEN 1 AND 1000),
  aside TEXT NOT NULL CHECK (length(aside) <= 1000),
  lines_kept INTEGER NOT NULL CHECK (lines_kept >= 0),
  lines_beyond INTEGER CHECK (lines_beyond >= 0),
  restored_us INTEGER NOT NULL,
  restored_by TEXT NOT NULL
) STRICT;

CREATE TABLE erased_customer (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  customer_id INTEGER NOT NULL UNIQUE REFERENCES customer(id),
  erased_us INTEGER NOT NULL
) STRICT;
"""
"""knife.chips counts the chips, chip_um is the depth of the deepest and tip_um what is missing of the tip, both in
micrometres so that half a millimetre is whole. knife.findings are the words of the inspection, one a line.
knife.apart is 1 for a knife beyond what the customer's note says, priced apart until the customer has said yes; then 2.
knife.added_us is when a knife was added later; NULL for one that came with its box. struck_knife counts those that
were counted and taken off again as typed by mistake. Neither was written down before: what a box holds less or more
than was counted is taken as struck or as added. tax_ppm are millionths: 7.25 % is
72500.

box.rounding is the shop's rule for parts of a cent when the box came in; what a box came to never changes with the
rule. box.not_above_cents is the most that the customer agreed to; packed_g the weight from the scale; parcel_mm three
numbers with x between, such as 450x250x100.

label.note_name and note_address are what the customer's note says of the way back; they are held against the label's.

promise.reckoned is the sum that stood beside the date when it was told.

A charge stands beside the prices of the knives, as it was quoted: with a knife its add-ons, without one what concerns
the whole box. A discount is stored above zero and taken off. One with ppm is a share in millionths of the work, and its
cents are 0; the cents of a minimum are what the work comes to at least. payment.sort says whether it is a payment, a
deposit or a refund; cents are above zero for all of them.

restored says when a copy was put in the place of the file: how many lines of history it had, and how many more the
file before had (NULL where nobody can tell), which lies in aside.

found_knife holds knives that nobody has missed yet; from_box_id is the box in which one was one too many.
"""
