"""A screen that opens is styled and laid out once, and stands as if that had been done over and over.

Textual styles a new screen when it is put together, when it comes to the front and when it is told of its size, and
lays it and what lies below out for each. What the walk through every screen (test_every_screen.py) asks of each of them
is here too.
"""

from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from textual._compositor import Compositor
from textual.app import App
from textual.css.scalar import Scalar
from textual.css.stylesheet import Stylesheet
from textual.dom import DOMNode
from textual.geometry import Region, Size
from textual.widget import Widget

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs import PaymentDialog
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.widgets.totals import Totals
from queueboard.shop.opening import Shop
from tests.board.answering import COUNTER
from tests.board.host import LARGE, SMALL, FakeDesk, Host, laid_out
from tests.busy_morning import busy_morning
from tests.shop.place import NOW, box

Worn = tuple[dict[str, object], dict[str, dict[str, object]]]


def parts(app: App[int]) -> Iterator[DOMNode]:
    """The screen on top, and all that is on it."""
    return iter(app.screen.walk_children(with_self=True))


def worn(node: DOMNode) -> Worn:
    """What the styles say of a part, and of what is drawn on it."""
    drawn = {name: dict(styles.base.get_rules()) for name, styles in node._component_styles.items()}
    return dict(node.styles.base.get_rules()), drawn


def places(app: App[int]) -> dict[Widget, Region]:
    """Where each part lies."""
    return {widget: placed.region for widget, placed in app.screen._compositor.full_map.items()}


def other_when_made_anew(app: App[int]) -> list[str]:
    """The parts that wear or lie otherwise once all is styled and laid out anew."""
    before, lay = {part: worn(part) for part in parts(app)}, places(app)
    app.screen.update_node_styles(animate=False)
    for part in app.screen.walk_children(Widget, with_self=True):
        part._box_model_cache.clear()
        part._clear_arrangement_cache()
    app.screen._refresh_layout()
    other = [f"{part!r} wears {worn(part)} in place of {was}" for part, was in before.items() if worn(part) != was]
    return other + [
        f"{part!r} moves from {lay.get(part)} to {at}" for part, at in places(app).items() if lay.get(part) != at
    ]


async def test_what_was_left_as_it_stood_is_seen(two_boxes: Shop) -> None:
    """A part that did not get its styles, and one that did not get its place, are both told."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL):
        assert not other_when_made_anew(app)

        app.screen.query_one("#sentence").set_class(True, "-trouble", update=False)
        (told,) = other_when_made_anew(app)
        assert told.startswith("Static(id='sentence', classes='-trouble') wears ")

        app.screen.query_one("#hint").styles.inline.set_rule("height", Scalar.from_number(3))
        assert any("id='hint') moves" in told for told in other_when_made_anew(app))


async def test_a_question_costs_its_own_parts_once(two_boxes: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its heading, sentence and hint are styled once, itself laid out twice at most, and what lies below not again."""
    desk, styled, laid = Desk(two_boxes, "MB", lambda: NOW), Counter[object](), Counter[object]()
    apply, reflow = Stylesheet.apply, Compositor.reflow

    def counted(self: Stylesheet, node: DOMNode, **how: Any) -> None:
        styled[node] += 1
        apply(self, node, **how)

    def seen(self: Compositor, parent: Widget, size: Size) -> object:
        laid[parent] += 1
        return reflow(self, parent, size)

    async with (app := QueueboardApp(desk)).run_test(size=SMALL) as pilot:
        board, question = app.screen, PaymentDialog(desk, box(two_boxes, COUNTER).box.id)
        monkeypatch.setattr(Stylesheet, "apply", counted)
        monkeypatch.setattr(Compositor, "reflow", seen)
        await app.push_screen(question)
        await pilot.pause()

        assert (laid[board], styled[board]) == (0, 0)
        assert laid[question] <= 2  # and once more where a part has told its size
        assert [styled[question.query_one(part)] for part in ("#dialog", "#heading", "#sentence", "#hint")] == [1] * 4


async def test_a_screen_that_was_covered_wears_the_colours_turned_to_meanwhile(two_boxes: Shop) -> None:
    """Back on top it is in the theme that was chosen above it, and another styling changes nothing."""
    async with (app := QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))).run_test(size=SMALL) as pilot:
        await pilot.press("enter")
        below = app.screen
        dark = [worn(part) for part in parts(app)]
        await pilot.press("f1", "ctrl+t", "escape")

        assert app.screen is below
        assert [worn(part) for part in parts(app)] != dark
        assert not other_when_made_anew(app)


async def test_the_board_takes_the_room_there_is() -> None:
    """In a high window what is below the columns has eight lines, in a low one three, however it came to be so."""
    for sizes in ((SMALL, LARGE), (LARGE, SMALL)):
        async with (app := QueueboardApp(FakeDesk(busy_morning()))).run_test(size=sizes[0]) as pilot:
            for size in (sizes[0], sizes[1], sizes[0]):
                await pilot.resize_terminal(*size)
                await laid_out(pilot, size)

                assert app.screen.query_one(Totals).outer_size.height == (8 if size == LARGE else 3)
