"""One match of a search as a card, so that the same surnames stand side by side."""

from collections.abc import Sequence
from itertools import zip_longest
from typing import TypeAlias

from textual.containers import Horizontal
from textual.content import Content
from textual.widgets import Static

from queueboard.clean import cell_text
from queueboard.phrases.announced import expected_words
from queueboard.phrases.boxes import counts_words, due_words, ready_words, waits_words
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.finding import phone_end_words
from queueboard.phrases.money import owed_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.shelf import GoneSeen

Match: TypeAlias = BoxPicture | GoneSeen


class Cards(Horizontal):
    """Cards side by side; one that lies there takes the next text, so that no letter makes new ones."""

    def __init__(self, fit: int) -> None:
        self._lying = [_nothing_yet() for _ in range(fit)]
        super().__init__(*self._lying, id="cards")

    def lay(self, contents: Sequence[Content]) -> None:
        """Show these."""
        new = [_nothing_yet() for _ in contents[len(self._lying) :]]
        self._lying += new
        self.mount_all(new)
        for lying, content in zip_longest(self._lying, contents):
            lying.display = content is not None
            if content is not None and content != lying.content:
                lying.update(content)


def _nothing_yet() -> Static:
    lying = Static(classes="card", markup=False)
    lying.display = False
    return lying


def card(box: Match, picture: Picture, *, marked: bool) -> Content:
    """One match, a line each; the mark is a sign, not only a colour."""
    lines = (
        cell_text(box.customer.name)[:60],
        cell_text(box.customer.town)[:60],
        phone_end_words(box.customer),
        *(_open(box, picture) if isinstance(box, BoxPicture) else _gone(box, picture)),
    )
    sign = "▸" if marked else " "
    gone = "" if isinstance(box, BoxPicture) else " GONE"
    return Content.assemble((f"{sign}{box.box.number}{gone}", "bold"), *(f"\n {line}" for line in lines if line))


def _open(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    waits = waits_words(box, picture.now)
    return (
        ready_words(box),
        expected_words(box, picture.now.date()) if box.box.announced else counts_words(box),
        due_words(box, picture.now),
        owed_words(box.owed_cents, picture.settings),
        cell_text(f"at {box.box.place}")[:60] if box.box.place else "",
        f"WAIT {waits}" if waits else "",
    )


def _gone(gone: GoneSeen, picture: Picture) -> tuple[str, ...]:
    return (
        f"left {date_words(gone.left_at.date(), picture.now.date())}",
        many(len(gone.left), "knife"),
        owed_words(gone.owed_cents, picture.settings),
    )
