"""The rows of a column as values: a box's heading with its knives beneath. Nothing here draws."""

from collections.abc import Iterable
from enum import StrEnum

from rich.cells import cell_len, set_cell_size

from queueboard.clean import cell_text
from queueboard.phrases.announced import NOT_COME
from queueboard.phrases.boxes import box_signs, n_of_m, standing_words
from queueboard.phrases.knives import DECLINED, LOOKING, knife_signs, length_words
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.values.knife import Knife
from queueboard.words import Column, Lateness

TWIN = "≈"
"""A knife of the same kind and length lies in another box."""


class Tone(StrEnum):
    """How loud a word is; never the only bearer of what it says."""

    PLAIN = "plain"
    STRONG = "strong"
    QUIET = "quiet"
    DUE = "due"
    LOUD = "loud"


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Some words in one tone."""

    text: str
    tone: Tone = Tone.PLAIN


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One place where the cursor can rest: a box's heading (no knife), or one knife."""

    box_id: int
    number: int
    knife: Knife | None
    first: tuple[Part, ...]
    """The first line; a person's text comes last in it and is cut where the column ends."""
    words: tuple[Part, ...] = ()
    """Words for the lines below, never cut while the column is wider than the word."""

    @property
    def key(self) -> tuple[int, int]:
        """Stays the same from picture to picture: box, knife (0 for the heading)."""
        return self.box_id, self.knife.id if self.knife is not None else 0

    def lines(self, width: int) -> tuple[tuple[Part, ...], ...]:
        """The row's lines for a column of so many cells."""
        lines = [cut(self.first, width)]
        flow: tuple[Part, ...] = ()
        for word in self.words:
            if flow and length(flow) + 1 + cell_len(word.text) > width:
                lines.append(cut(flow, width))
                flow = ()
            flow = (*flow, *((Part(text=" "),) if flow else ()), word)
        return (*lines, cut(flow, width)) if flow else tuple(lines)


def length(parts: Iterable[Part]) -> int:
    """Cells that the parts need."""
    return sum(cell_len(part.text) for part in parts)


def cut(parts: tuple[Part, ...], width: int) -> tuple[Part, ...]:
    """The parts, with an ellipsis where they would pass the width."""
    if length(parts) <= width:
        return parts
    kept: list[Part] = []
    left = max(0, width - 1)
    for part in parts:
        text = part.text if cell_len(part.text) <= left else set_cell_size(part.text, left).rstrip()
        kept.append(Part(text=text, tone=part.tone))
        left -= cell_len(part.text)
        if left <= 0:
            break
    return (*kept, Part(text="…", tone=Tone.QUIET))


def nearest(rows: tuple[Row, ...], cursor: int) -> tuple[Row, ...]:
    """The rows in the order in which a cursor that was at *cursor* would rather be on them.

    First the knives of its own box, so that one knife after the other can be moved; then what comes below, where the
    next box begins with its heading: another customer's knife never slips under the cursor.
    """
    if cursor >= len(rows):
        return rows
    here, after, before = rows[cursor], rows[cursor:], tuple(reversed(rows[:cursor]))
    own = (row for row in (*after, *before) if row.box_id == here.box_id and row.knife is not None)
    return (here, *own, *after, *before)


def in_order(boxes: Iterable[BoxPicture]) -> list[BoxPicture]:
    """As they stand in a column: what is only announced comes last.

    It is no work yet, and the cursor begins at the top.
    """
    return sorted(boxes, key=lambda box: box.box.announced)


def rows_of_box(box: BoxPicture, column: Column, picture: Picture) -> tuple[Row, ...]:
    """The heading of a box and its knives in one column; none where it has nothing there."""
    knives = box.in_column(column)
    if not knives and (column is not Column.RECEIVED or box.box.opened):
        return ()
    below = (knife_row(knife, picture.settings, twin=knife.id in box.look_alikes) for knife in knives)
    return (heading(box, picture), *below)


def heading(box: BoxPicture, picture: Picture) -> Row:
    """A box's heading: number and name; below ship-by word, n of m, and what else marks it."""
    due, *others = box_signs(box, picture.now)
    standing = standing_words(box)
    count = standing if not box.box.opened else n_of_m(box)
    words = [Part(text=due, tone=tone_of(due))]
    if not box.box.announced:
        words.append(Part(text=count, tone=Tone.QUIET))
    if box.box.packing is not None and standing == box.box.packing.value:
        words.append(Part(text=standing, tone=Tone.QUIET))
    words += [Part(text=sign, tone=tone_of(sign, Tone.STRONG)) for sign in others]
    if box.close_out is not None:
        words.append(Part(text="CLOSE-OUT BEGUN", tone=Tone.STRONG))
    return Row(
        box_id=box.box.id,
        number=box.box.number,
        knife=None,
        first=(
            Part(text=str(box.box.number), tone=Tone.STRONG),
            Part(text=f" {cell_text(box.customer.name)}", tone=Tone.STRONG),
        ),
        words=tuple(words),
    )


def knife_row(knife: Knife, settings: Settings, *, twin: bool) -> Row:
    """A knife: the end of its tag, the words that mark it, kind and length, then what tells it apart."""
    size = length_words(knife.length_mm, settings.length_unit).rpartition(" ")[0]
    what = f"{cell_text(knife.kind)} {size}".rstrip()
    signs = tuple(Part(text=f" {sign}", tone=tone_of(sign, Tone.STRONG)) for sign in knife_signs(knife))
    return Row(
        box_id=knife.box_id,
        number=knife.box_number,
        knife=knife,
        first=(
            Part(text=f"-{knife.number}".rjust(3), tone=Tone.QUIET),
            *signs,
            Part(text=f" {what}"),
            *((Part(text=f" {TWIN}", tone=Tone.DUE),) if twin else ()),
            *((Part(text=f" {cell_text(knife.mark)}", tone=Tone.QUIET),) if knife.mark else ()),
        ),
    )


def tone_of(word: str, otherwise: Tone = Tone.PLAIN) -> Tone:
    """How loud a state's word is."""
    if word in {Lateness.LATE.value, Lateness.WILL_BE_LATE.value, DECLINED, LOOKING, NOT_COME}:
        return Tone.LOUD
    return Tone.DUE if word in {"TODAY", Lateness.TIGHT.value} else otherwise
