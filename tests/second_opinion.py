"""A month's figures worked out a second time from the bare rows: plain SQL, history replayed, none of our code."""

import json
from collections import Counter
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

from queueboard.records.connection import Raw

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


class SecondOpinion:
    """One shop, one month, one zone."""

    def __init__(self, shop: Raw, month: date, zone: ZoneInfo) -> None:
        after = date(month.year + month.month // 12, month.month % 12 + 1, 1)
        self.zone = zone
        self.ends = [
            round((datetime(one.year, one.month, one.day, tzinfo=zone) - EPOCH).total_seconds() * 1_000_000)
            for one in (month, after)
        ]
        self.lines = shop.execute(
            "SELECT group_id, at_us, operation, entity, entity_id, before, after FROM history ORDER BY id"
        ).fetchall()
        self.undoing = dict(shop.execute("SELECT group_id, undoes FROM history WHERE undoes IS NOT NULL").fetchall())
        self.kinds = dict(shop.execute("SELECT id, kind FROM knife").fetchall())
        self.still_declined = {row[0] for row in shop.execute("SELECT id FROM knife WHERE declined IS NOT NULL")}
        self.money = dict(
            shop.execute(
                "SELECT way, sum(CASE sort WHEN 'refund' THEN -cents ELSE cents END) FROM payment "
                "WHERE at_us BETWEEN ? AND ? - 1 GROUP BY way",
                self.ends,
            ).fetchall()
        )
        self.tested, self.not_ok = shop.execute(
            "SELECT count(DISTINCT knife_id), count(DISTINCT CASE WHEN ok = 0 THEN knife_id END) FROM edge_test "
            "WHERE tested_us BETWEEN ? AND ? - 1",
            self.ends,
        ).fetchone()
        self.looked_for = {row[0] for row in shop.execute("SELECT box_id FROM knife WHERE looking_for = 1")}
        self.box_of = dict(shop.execute("SELECT id, box_id FROM knife").fetchall())
        self.told = shop.execute(
            "SELECT b.id, b.number, b.goes_by, b.closed_us, p.day FROM promise p JOIN box b ON b.id = p.box_id "
            "WHERE b.announced_us IS NULL ORDER BY p.id"
        ).fetchall()
        fitted = "SELECT process FROM belt WHERE was_belt_id IS NULL AND fitted_us BETWEEN ? AND ? - 1"
        self.belts = Counter(process for (process,) in shop.execute(fitted, self.ends))
        (self.call_backs,) = shop.execute(
            "SELECT count(*) FROM box WHERE complaint = 1 AND received_us BETWEEN ? AND ? - 1", self.ends
        ).fetchone()
        self.boxes, self.box_knives = shop.execute(
            "SELECT count(DISTINCT b.id), count(*) FROM box b JOIN knife k ON k.box_id = b.id AND k.place = 'gone' "
            "WHERE b.closed_us BETWEEN ? AND ? - 1",
            self.ends,
        ).fetchone()

    def stands(self, group: str) -> bool:
        """True for an action that is not undone by an undo that stands."""
        return not any(undone == group and self.stands(undo) for undo, undone in self.undoing.items())

    def knife_lines(self) -> list[tuple[int, int, dict[str, object], dict[str, object]]]:
        """Instant, knife, before and after of every line about a knife that stands, undo itself left out."""
        known: dict[str, bool] = {}
        found = []
        for group, at_us, operation, entity, knife, before, after in self.lines:
            if entity != "knife" or operation == "undo" or after is None or knife not in self.kinds:
                continue
            if group not in known:
                known[group] = self.stands(group)
            if known[group]:
                found.append((at_us, knife, json.loads(before or "{}"), json.loads(after)))
        return found

    def inside(self, at_us: int) -> bool:
        """True for an instant of the month."""
        return self.ends[0] <= at_us < self.ends[1]

    def ready(self) -> dict[int, date]:
        """By knife the day on which it was ready first, for those of the month."""
        first: dict[int, int] = {}
        for at_us, knife, before, after in self.knife_lines():
            came = after["place"] == "ready" and before.get("place") not in ("ready", "gone")
            if came and after["declined"] is None:
                first.setdefault(knife, at_us)
        return {
            knife: datetime.fromtimestamp(at_us / 1_000_000, self.zone).date()
            for knife, at_us in first.items()
            if self.inside(at_us)
        }

    def by_kind(self) -> Counter[str]:
        """Knives of the month by kind."""
        return Counter(self.kinds[knife] for knife in self.ready())

    def declined(self) -> int:
        """Knives declined in the month that still are."""
        changed = {
            knife
            for at_us, knife, before, after in self.knife_lines()
            if self.inside(at_us) and after["declined"] and not before.get("declined")
        }
        return len(changed & self.still_declined)

    def kept(self, day: date) -> dict[tuple[int, str], bool]:
        """By box and day told whether that date held, for the days of the month before *day*.

        For a shop where pick-ups are promised by 16:00 of a day and no day told is a closed one.
        """
        ready = {
            knife: at_us
            for at_us, knife, before, after in self.knife_lines()
            if after["place"] == "ready" and before.get("place") not in ("ready", "gone")
        }
        held = {}
        for box, number, goes_by, closed_us, told in self.told:
            clock = "23:59" if goes_by == "parcel" else "16:00"
            until = datetime.fromisoformat(f"{told}T{clock}").replace(tzinfo=self.zone)
            end_us = (until - EPOCH).total_seconds() * 1_000_000
            if not self.inside(round(end_us)) or date.fromisoformat(told) >= day:
                continue
            own = [ready.get(knife) for knife, whose in self.box_of.items() if whose == box]
            done = [closed_us] if goes_by == "parcel" else own
            whole = box not in self.looked_for and all(at_us is not None and at_us <= end_us for at_us in done)
            held[number, told] = whole
        return held
