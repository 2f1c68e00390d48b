"""The papers of one box behind a digit each: written as text and as a page, and opened where there is a browser."""

from collections.abc import Callable
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopModal
from queueboard.board.desk import Desk
from queueboard.board.screens.paper_out import write_paper
from queueboard.errors import FileError
from queueboard.phrases import helping
from queueboard.phrases.boxes import box_title
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.proof import card_of

Paper = tuple[str, str, str]
"""The name of its file without the ending, the paper as text, the paper as a page."""


class PapersDialog(ShopModal[str]):
    """Leaves with the sentence that says where the paper lies, or None."""

    DEFAULT_CSS = """
    PapersDialog { align: center bottom; background: $background 40%; }
    PapersDialog > #papers { width: 100%; height: auto; background: $panel; padding: 0 1; border-top: solid $primary; }
    PapersDialog #papers-of { height: auto; text-style: bold; margin-bottom: 1; }
    PapersDialog #papers-list, PapersDialog #papers-said, PapersDialog #papers-keys { height: auto; }
    PapersDialog #papers-said { color: $text-error; text-style: bold; }
    PapersDialog #papers-keys { color: $text-muted; margin-top: 1; }
    """
    HELP = helping.PAPERS
    BINDING_GROUP_TITLE = "The papers of the box under the cursor"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("1", "take(0)", "tags for the handles", id="papers.tags"),
        Binding("2", "take(1)", "the customer's stub", id="papers.stub"),
        Binding("3", "take(2)", "packing slip with proof card", id="papers.slip"),
        Binding("4", "take(3)", "proof card alone", id="papers.card"),
        Binding("5", "take(4)", "day sheet", id="papers.day"),
        Binding("minus,escape,q,P,full_stop,comma", "leave", "back", id="papers.leave"),
    ]
    AUTO_FOCUS = ""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id

    def compose(self) -> ComposeResult:
        with Vertical(id="papers"):
            yield Static(Content(f"Papers · {box_title(self._box())}"), id="papers-of")
            lines = "\n".join(f"{n}  {what}" for n, (what, _) in enumerate(PAPERS, 1))
            yield Static(Content(lines), id="papers-list")
            yield Static("", id="papers-said", markup=False)
            yield Static("a digit writes it, as text and as a page · - back", id="papers-keys", markup=False)

    def _box(self) -> BoxPicture:
        return self.desk.picture.box_by_id(self.box_id)

    def action_take(self, place: int) -> None:
        """Write the paper and leave."""
        try:
            name, text, page = PAPERS[place][1](self.desk, self._box())
            said = set_down(self.desk, name, text, page)
        except KeyError:
            self.say("This box has left the board.", trouble=True)
        except FileError as error:
            self.say(str(error), trouble=True)
        else:
            self.dismiss(said)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it in the dialog."""
        self.query_one("#papers-said", Static).update(Content(sentence))

    def action_leave(self) -> None:
        self.dismiss(None)


def set_down(desk: Desk, name: str, text: str, page: str) -> str:
    """Write a paper as text and as a page, open the page where a browser has a window; where it lies, in a sentence."""
    from queueboard.papers.opening import open_page

    write_paper(desk, f"{name}.txt", text)
    path = write_paper(desk, f"{name}.html", page)
    opened = "Opened in the browser; it lies in" if open_page(path) else "Open this page and print it:"
    return f"{opened} {path}, with the plain text beside it."


def _tags(desk: Desk, box: BoxPicture) -> Paper:
    from queueboard.papers.pages.slips import tags_page
    from queueboard.papers.slips import handle_tags

    picture = desk.picture
    page = tags_page(box, picture, picture.settings.papers.slips)
    return f"tags-{box.box.number}", handle_tags(box, picture), page


def _stub(desk: Desk, box: BoxPicture) -> Paper:
    from queueboard.papers.pages.slips import stub_page
    from queueboard.papers.slips import stub

    picture = desk.picture
    return f"stub-{box.box.number}", stub(box, picture), stub_page(box, picture, picture.settings.papers.slips)


def _slip(desk: Desk, box: BoxPicture) -> Paper:
    from queueboard.papers.proof_card import slip_html, slip_text

    card = card_of(desk.shop, box.box.number)
    if card is None:
        raise KeyError(box.box.number)
    return f"slip-{box.box.number}", slip_text(card), slip_html(card, card.settings.papers.size)


def _card(desk: Desk, box: BoxPicture) -> Paper:
    from queueboard.papers.proof_card import card_html, card_text

    card = card_of(desk.shop, box.box.number)
    if card is None:
        raise KeyError(box.box.number)
    return f"card-{box.box.number}", card_text(card), card_html(card, card.settings.papers.size)


def _day(desk: Desk, _box: BoxPicture) -> Paper:
    from queueboard.board.sheets import keep_order

    keep_order(desk)
    return day_paper(desk.picture)


def day_paper(picture: Picture) -> Paper:
    """The day sheet of a picture."""
    from queueboard.papers.day_sheet import day_sheet
    from queueboard.papers.pages.day import day_page

    name = f"day-{picture.now.date().isoformat()}"
    return name, day_sheet(picture), day_page(picture, picture.settings.papers.size)


PAPERS: tuple[tuple[str, Callable[[Desk, BoxPicture], Paper]], ...] = (
    ("tags for the handles, each with its code", _tags),
    ("the customer's stub", _stub),
    ("packing slip with proof card", _slip),
    ("proof card alone", _card),
    ("day sheet", _day),
)
"""What each digit stands for, and how it is made."""
