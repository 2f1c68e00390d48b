"""Schema version 5, the shelf: where a box stands, notices to customers, call-backs."""

SQL = """
ALTER TABLE box ADD COLUMN place TEXT NOT NULL DEFAULT '' CHECK (length(place) <= 60);

CREATE TABLE notice (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL REFERENCES box(id),
  sort TEXT NOT NULL CHECK (length(sort) BETWEEN 1 AND 20),
  way TEXT NOT NULL CHECK (length(way) BETWEEN 1 AND 20),
  text TEXT NOT NULL CHECK (length(text) <= 8000),
  told_us INTEGER NOT NULL,
  told_by TEXT NOT NULL CHECK (length(told_by) BETWEEN 1 AND 20)
) STRICT;
CREATE INDEX notice_box ON notice(box_id);

CREATE TABLE call_back (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  box_id INTEGER NOT NULL UNIQUE REFERENCES box(id),
  old_box_id INTEGER NOT NULL REFERENCES box(id),
  free INTEGER NOT NULL CHECK (free IN (0, 1)),
  days INTEGER NOT NULL CHECK (days BETWEEN 0 AND 36525),
  why TEXT NOT NULL CHECK (length(why) <= 500),
  noted_us INTEGER NOT NULL,
  noted_by TEXT NOT NULL CHECK (length(noted_by) BETWEEN 1 AND 20)
) STRICT;
CREATE INDEX call_back_old_box ON call_back(old_box_id);

CREATE TABLE call_back_knife (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  row_version INTEGER NOT NULL,
  call_back_id INTEGER NOT NULL REFERENCES call_back(id),
  knife_id INTEGER NOT NULL UNIQUE REFERENCES knife(id),
  old_knife_id INTEGER NOT NULL REFERENCES knife(id)
) STRICT;
CREATE INDEX call_back_knife_of ON call_back_knife(call_back_id);
CREATE INDEX call_back_knife_old ON call_back_knife(old_knife_id);
"""
"""box.place is where a box stands until it is fetched, such as C4.

A notice is what a customer was told, and how; it was sent by a person's own means. call_back links a box that came back
to the one that had gone: days lie between them, free is 1 where nothing was charged for the work again, and why is what
was wrong. call_back_knife links the knives of the two, where they are known.
"""
