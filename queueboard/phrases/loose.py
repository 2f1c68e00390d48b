"""A knife that lies loose, in words: what was understood, and each knife that it could be."""

from datetime import datetime

from queueboard.phrases.counts import found_knife_words, found_where_words
from queueboard.phrases.dates import many
from queueboard.phrases.knives import knife_line, last_seen_words
from queueboard.settings.shapes import Settings
from queueboard.shop.loose import Candidate, Seen
from queueboard.values.knife import Knife


def seen_words(seen: Seen) -> str:
    """What was understood: chef, 200 or 508 mm, marked black nick."""
    if seen.tag:
        return f"tag {seen.tag}"
    lengths = " or ".join(str(length) for length in seen.lengths_mm)
    marked = f"marked {' '.join(seen.words)}" if seen.words else ""
    return ", ".join(filter(None, (seen.kind or "any kind", f"{lengths} mm" if lengths else "", marked)))


def candidate_words(one: Candidate, settings: Settings) -> str:
    """Which knife: 417-3 LOOKED FOR chef 20 cm, black handle: Maren Tallis; FOUND chef 20 cm, red dot."""
    if not isinstance(one.knife, Knife):
        return f"FOUND {found_knife_words(one.knife, settings)}"
    name = "" if one.box is None else f": {one.box.customer.name}"
    return f"{knife_line(one.knife, settings)}{name}"


def candidate_place(one: Candidate, now: datetime) -> str:
    """Where it was last, when, by whom, and how it differs from what was seen."""
    if isinstance(one.knife, Knife):
        where = f"last: {last_seen_words(one.knife, now)}"
    else:
        where = found_where_words(one.knife, now)
    off = f"{one.off_mm} mm off" if one.off_mm is not None and one.off_mm > 5 else ""
    lacks = f"no “{' '.join(one.lacks)}” in its mark" if one.lacks else ""
    return " · ".join(filter(None, (where, "another kind" if one.other_kind else "", off, lacks)))


def candidates_words(count: int) -> str:
    """How many it could be: 3 knives it could be; what to do where it could be none."""
    if not count:
        return "No open or found knife fits. Type less: the kind alone, or a word of its mark."
    return f"{many(count, 'knife')} it could be, the likeliest first"
