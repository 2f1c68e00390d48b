"""The layout's one text as a PostgreSQL server reads it: few rules, so that a new table needs no second text."""

import re
from collections.abc import Iterator

from queueboard.records.refusals import ONLY_ADDED

RULES = (
    (r"\) STRICT;", ");"),
    (r"INTEGER PRIMARY KEY AUTOINCREMENT", "BIGINT PRIMARY KEY"),
    (r"\bINTEGER\b", "BIGINT"),  # SQLite's whole numbers have 64 bits
    (r"\bTEXT\b", 'TEXT COLLATE "C"'),  # sorted by code point whatever the server's language
    (r"(REFERENCES \w+\(id\))", r"\1 DEFERRABLE"),  # rows are taken in table by table
)
"""Types are in capitals and columns are not: a column named text stays one."""

NUMBERED = re.compile(r"CREATE TABLE (\w+) \(\s+id INTEGER PRIMARY KEY AUTOINCREMENT")

FIRST = f"""
CREATE TABLE layout_now (layout BIGINT NOT NULL);
CREATE TABLE number_given (name TEXT COLLATE "C" PRIMARY KEY, number BIGINT NOT NULL);

CREATE FUNCTION give_number() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF current_setting('queueboard.filling', true) = 'on' THEN RETURN NEW; END IF;
  IF NEW.id IS NULL THEN
    INSERT INTO number_given AS n (name, number) VALUES (TG_TABLE_NAME, 1)
    ON CONFLICT (name) DO UPDATE SET number = n.number + 1 RETURNING number INTO NEW.id;
  ELSE
    INSERT INTO number_given AS n (name, number) VALUES (TG_TABLE_NAME, NEW.id)
    ON CONFLICT (name) DO UPDATE SET number = greatest(n.number, excluded.number);
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION only_added() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN RAISE EXCEPTION '{ONLY_ADDED}' USING ERRCODE = '23000'; END $$;

CREATE FUNCTION not_replaced() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT 1 FROM history h WHERE h.id = NEW.id OR (h.group_id = NEW.group_id AND h.line = NEW.line)) THEN
    RAISE EXCEPTION '{ONLY_ADDED}' USING ERRCODE = '23000';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION instr(text, text) RETURNS integer LANGUAGE sql IMMUTABLE AS 'SELECT strpos($1, $2)';
CREATE FUNCTION max(numeric, numeric) RETURNS numeric LANGUAGE sql IMMUTABLE AS 'SELECT greatest($1, $2)';
CREATE FUNCTION json_extract(text, text) RETURNS text LANGUAGE sql IMMUTABLE
AS 'SELECT $1::json ->> substr($2, 3)';
"""
"""What SQLite has by itself. A sequence of the server would leave gaps where an action was refused, and history must
have none: numbers are given by a table, which rolls back with the rest, as the writers queue anyway."""

FILLED = """
DO $$ DECLARE t text; BEGIN
  FOR t IN SELECT c.relname FROM pg_trigger g JOIN pg_class c ON c.oid = g.tgrelid
  WHERE g.tgname = c.relname || '_number' AND c.relnamespace = current_schema()::regnamespace LOOP
    EXECUTE format('INSERT INTO number_given AS n (name, number) SELECT %L, max(id) FROM %I HAVING max(id) IS NOT NULL '
      'ON CONFLICT (name) DO UPDATE SET number = greatest(n.number, excluded.number)', t, t);
  END LOOP;
END $$;
"""
"""While a shop is filled its rows bring their numbers along, and the highest is looked for once at the end: a number
that is written a million times in one transaction has a million versions, all of which are walked for the next."""

GUARDS = {
    "history_no_update": "BEFORE UPDATE ON history FOR EACH ROW EXECUTE FUNCTION only_added()",
    "history_no_delete": "BEFORE DELETE ON history FOR EACH ROW EXECUTE FUNCTION only_added()",
    "history_no_replace": "BEFORE INSERT ON history FOR EACH ROW EXECUTE FUNCTION not_replaced()",
}
"""The guards of history by name, as a server wants them written."""

BESIDES = "CREATE TRIGGER history_no_truncate BEFORE TRUNCATE ON history EXECUTE FUNCTION only_added();"
"""The one guard more that a server needs."""


def for_server(statement: str) -> Iterator[str]:
    """One statement of the layout as statements for a server."""
    text = re.sub(r"--[^\n]*", "", statement).strip()
    guard = re.match(r"CREATE TRIGGER (\w+)", text)
    if guard is not None:
        yield f"CREATE TRIGGER {guard[1]} {GUARDS[guard[1]]};"
        if guard[1] == "history_no_delete":
            yield BESIDES
        return
    numbered = NUMBERED.match(text)
    for old, new in RULES:
        text = re.sub(old, new, text)
    yield text
    if numbered is not None:
        yield (
            f"CREATE TRIGGER {numbered[1]}_number BEFORE INSERT ON {numbered[1]} "
            "FOR EACH ROW EXECUTE FUNCTION give_number();"
        )
