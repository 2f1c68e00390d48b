"""Below the columns: the batch totals of the box under the cursor, and the knife the cursor is on."""

from collections.abc import Iterator

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.css.scalar import Scalar
from textual.widgets import Static

from queueboard.clean import cell_text
from queueboard.phrases.boxes import batch_totals, box_signs, twin_words
from queueboard.phrases.dates import told_words
from queueboard.phrases.day import half_words
from queueboard.phrases.knives import (
    found_words,
    knife_name,
    knife_signs,
    last_seen_words,
    wait_words,
    wish_in_capitals,
)
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife

LOW_LINES = 3
"""On a low screen the totals have so many lines; what does not fit there stands on the right."""

LEFT_CELLS = (44, 54)
"""Fewest and most cells of the left side on a low screen, as its lines need."""


class Totals(Horizontal):
    """Totals of a box on the left; on the right the knife under the cursor, or more about the box."""

    def __init__(self) -> None:
        super().__init__(id="totals")
        self.told: tuple[BoxPicture | None, Knife | None, Picture] | None = None

    def compose(self) -> ComposeResult:
        yield Static(id="box-totals", markup=False)
        yield Static(id="knife-facts", markup=False)

    def tell(self, box: BoxPicture | None, knife: Knife | None, picture: Picture) -> None:
        """Show a box and a knife of it; either may be missing."""
        self.told = (box, knife, picture)
        left, right = self.query_one("#box-totals", Static), self.query_one("#knife-facts", Static)
        if box is None:
            _put(left, Content())
            _put(right, Content())
            return
        low = self.size.height <= LOW_LINES
        lines = box_contents(box, picture, with_signs=not low)
        _put(left, Content("\n").join(lines))
        if low:
            longest = max(line.cell_length for line in lines[:LOW_LINES])
            _make_wide(left, max(LEFT_CELLS[0], min(longest + 1, LEFT_CELLS[1])))
        else:
            _make_wide(left, "3fr")
        if knife is not None:
            _put(right, Content("\n").join(knife_contents(knife, box, picture)))
        elif low:
            _put(right, Content("\n").join(lines[LOW_LINES:]))
        else:
            _put(right, Content("\n").join(Content(cell_text(line)) for line in told_lines(box, picture)))

    def on_resize(self) -> None:
        """More or fewer lines fit."""
        if self.told is not None:
            self.tell(*self.told)


def _put(side: Static, content: Content) -> None:
    """Show something else there; each side is as large as it is, so that nothing needs to be laid out for it."""
    if content != side.content:
        side.update(content, layout=False)


def _make_wide(side: Static, width: int | str) -> None:
    """Give a side its width, where it has another: Textual would lay the screen out again all the same."""
    if (now := side.styles.width) is None or now != Scalar.parse(str(width)):
        side.styles.width = width


def told_lines(box: BoxPicture, picture: Picture) -> Iterator[str]:
    """What was told to the customer, the newest first; and how the count at receiving stood to the note."""
    yield ""
    if box.box.note_says is not None and box.box.note_says != box.box.counted:
        yield f"counted {box.box.counted}, the note says {box.box.note_says}"
    yield from (told_words(promise, picture.now, box.box.goes_by) for promise in reversed(box.promises))


def box_contents(box: BoxPicture, picture: Picture, *, with_signs: bool) -> tuple[Content, ...]:
    """The box's title, with the words that mark it where there is room for them, then its totals."""
    signs = "  ".join((*box_signs(box, picture.now), "")) if with_signs else ""
    title = Content.assemble(
        (f"{box.box.number}  ", "bold $text-primary"), (signs, "bold"), (cell_text(box.customer.name), "bold")
    )
    lines = batch_totals(box, picture.settings, picture.now, working_out=picture.plan_follows)
    note = (f"note: {cell_text(box.box.note)}",) if box.box.note else ()
    return (title, *(Content(cell_text(line)) for line in (*lines, *note)))


def knife_contents(knife: Knife, box: BoxPicture, picture: Picture) -> Iterator[Content]:
    """The knife's tag and words, what it is, what is wished, noted or waited for, and where its twin lies."""
    signs = "  ".join(knife_signs(knife))
    yield Content.assemble((f"{knife.tag}  ", "bold $text-primary"), (signs, "bold"))
    lines = (
        knife_name(knife, picture.settings),
        f"came in {knife.condition.value}, {last_seen_words(knife, picture.now)}",
        f"TRIAL: {half}" if (half := half_words(knife, picture)) else "",
        found_words(knife),
        f"declined: {knife.declined.value}" if knife.declined is not None else "",
        f"waits for {wait_words(knife, picture.now)}" if knife.waiting_for is not None else "",
        twin_words(knife, picture) if knife.id in box.look_alikes else "",
        wish_in_capitals(knife),
        f"note: {knife.note}" if knife.note else "",
    )
    yield from (Content(cell_text(line)) for line in lines if line)
