"""Below the columns: the batch totals of the box under the cursor, and the knife the cursor is on."""

from collections.abc import Iterator

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.widgets import Static

from queueboard.clean import cell_text
from queueboard.phrases.boxes import batch_totals, box_signs
from queueboard.phrases.knives import knife_name, knife_signs, last_seen_words, wait_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife


class Totals(Horizontal):
    """Totals of a box on the left, one knife on the right; on a small screen the first lines of both."""

    def __init__(self) -> None:
        super().__init__(id="totals")

    def compose(self) -> ComposeResult:
        yield Static(id="box-totals", markup=False)
        yield Static(id="knife-facts", markup=False)

    def tell(self, box: BoxPicture | None, knife: Knife | None, picture: Picture) -> None:
        """Show a box and a knife of it; either may be missing."""
        self.query_one("#box-totals", Static).update(box_content(box, picture) if box is not None else Content())
        facts = self.query_one("#knife-facts", Static)
        facts.display = knife is not None
        if knife is not None and box is not None:
            facts.update(Content("\n").join(knife_contents(knife, box, picture)))


def box_content(box: BoxPicture, picture: Picture) -> Content:
    """The box's title with the words that mark it, then its totals."""
    signs = "  ".join(box_signs(box, picture.now))
    title = Content.assemble(
        (f"{box.box.number}  ", "bold $text-primary"), (f"{signs}  ", "bold"), (cell_text(box.customer.name), "bold")
    )
    lines = batch_totals(box, picture.settings, picture.now)
    note = (f"note: {cell_text(box.box.note)}",) if box.box.note else ()
    return Content("\n").join((title, *(Content(cell_text(line)) for line in (*lines, *note))))


def knife_contents(knife: Knife, box: BoxPicture, picture: Picture) -> Iterator[Content]:
    """The knife's tag and words, what it is, what is wished, noted or waited for, and where its twin lies."""
    signs = "  ".join(knife_signs(knife))
    yield Content.assemble((f"{knife.tag}  ", "bold $text-primary"), (signs, "bold"))
    lines = (
        knife_name(knife, picture.settings),
        f"came in {knife.condition.value}, {last_seen_words(knife, picture.now)}",
        f"declined: {knife.declined.value}" if knife.declined is not None else "",
        f"waits for {wait_words(knife, picture.now)}" if knife.waiting_for is not None else "",
        twin_words(knife, picture) if knife.id in box.look_alikes else "",
        f"WISH: {knife.wish}" if knife.wish else "",
        f"note: {knife.note}" if knife.note else "",
    )
    yield from (Content(cell_text(line)) for line in lines if line)


def twin_words(knife: Knife, picture: Picture) -> str:
    """Which knives of other boxes it could be taken for: ≈ looks like 423-1, 431-2."""
    twins = [
        other.tag
        for box in picture.boxes
        for other in box.on_hand
        if other.id in box.look_alikes
        and other.box_id != knife.box_id
        and (other.kind, other.length_mm) == (knife.kind, knife.length_mm)
    ]
    return f"≈ looks like {', '.join(twins)}: see its tag" if twins else ""
