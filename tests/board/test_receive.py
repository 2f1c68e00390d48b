"""Taking in a box, from the surname to the stub, over a real shop file."""

from datetime import date

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.clean import cell_text
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import customers
from queueboard.words import CameBy, GoesBy, LabelOwner, PromiseKind, WaitingFor
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host
from tests.board.typing import fill
from tests.pictures import HOSTILE_NAMES
from tests.shop.place import NOW, box, counter, picture


def host(shop: Shop) -> Host:
    """An app that shows the form."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: ReceiveScreen(desk))


def form(app: Host) -> ReceiveScreen:
    """The form, while it is the screen on top."""
    assert isinstance(app.screen, ReceiveScreen)
    return app.screen


def newest(shop: Shop) -> BoxPicture:
    """The box with the highest number."""
    return max(picture(shop).boxes, key=lambda b: b.box.number)


async def test_a_parcel_from_a_known_customer(two_boxes: Shop) -> None:
    """Surname, count, lines, date and label end in a stored box and its stub."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "tallis", "<2>", "<enter>", "4", "5")
        await fill(pilot, "3 chef 8 dull, black handle ! keep the patina", "bread", "", "roll, sheath")
        await fill(
            pilot,
            "<1>",
            "fri",
            "3",
            "<3>",
            "+30",
            "",
            "R Tallis",
            "12 Pier Ln",
            "4 lb 8 oz",
            "300",
            "shelf 2",
            "<plus>",
            "<enter>",
        )

        assert isinstance(app.screen, ReceivedScreen)
        await pilot.press("enter")
        assert (app.left, app.answer) == (True, 102)

    stored = box(two_boxes, 102)
    assert stored.customer.name == "R. Tallis"
    assert (stored.box.came_by, stored.box.goes_by) == (CameBy.MAIL, GoesBy.PARCEL)
    assert (stored.box.counted, stored.box.note_says, stored.box.waiting_for) == (4, 5, WaitingFor.COUNT)
    assert [knife.kind for knife in stored.knives] == ["chef", "chef", "chef", "bread"]
    assert (stored.knives[0].mark, stored.knives[0].wish) == ("black handle", "keep the patina")
    assert [thing.name for thing in stored.things] == ["roll", "sheath"]
    assert stored.promise is not None
    assert (stored.promise.kind, stored.promise.day) == (PromiseKind.DAY, date(2026, 11, 13))
    assert stored.label is not None
    assert (stored.label.owner, stored.label.expires_on) == (LabelOwner.CUSTOMER, date(2026, 12, 9))
    assert (stored.label.address_on, stored.label.limit_g, stored.label.value_cents) == ("12 Pier Ln", 2041, 30000)
    assert (stored.box.rush, stored.box.note) == (True, "shelf 2")


async def test_a_new_customer_at_the_counter(two_boxes: Shop) -> None:
    """A name nobody has is offered as a new customer, with phone and town, and stored with the box."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake", "555 0177", "Dunmere", "<1>", "<1>", "1", "", "chef 8", "<f2>")

        assert isinstance(app.screen, ReceivedScreen)

    stored = newest(two_boxes)
    assert (stored.customer.name, stored.customer.phone, stored.customer.town) == ("Bren Oake", "555 0177", "Dunmere")
    assert (stored.box.goes_by, stored.box.opened, len(stored.knives)) == (GoesBy.PICK_UP, True, 1)


async def test_a_refused_box_leaves_no_customer_behind(two_boxes: Shop) -> None:
    """The count differs: nobody is stored yet; with phone and town typed since and the count right, both are."""
    before = customers(two_boxes)
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake", "", "", "<1>", "<1>", "2", "", "chef 8", "<f2>")
        assert "You counted 2 and typed 1 knife; one of the two" in " ".join(dump(app).split())
        assert customers(two_boxes) == before

        form(app).picker.phone.value, form(app).picker.town.value = "555 0177", "Dunmere"
        form(app).counted.value = "1"
        await pilot.press("f2")
        await pilot.pause()

    (added,) = [customer for customer in customers(two_boxes) if customer not in before]
    assert (added.name, added.phone, added.town) == ("Bren Oake", "555 0177", "Dunmere")
    assert newest(two_boxes).customer == added


async def test_up_leads_back_out_of_the_knives(two_boxes: Shop) -> None:
    """In an empty knives line ↑ goes back a field; after lines it first brings the last one back, which is kept."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", "2", "")
        screen = form(app)
        assert screen.focused is screen.lines.line
        await pilot.press("up")
        assert screen.focused is screen.note_says
        assert "↑ back" in dump(app)

        await fill(pilot, "", "chef 8", "<up>")
        assert (screen.focused, screen.lines.line.value) == (screen.lines.line, "chef 8")
        await pilot.press("up")
        assert (screen.focused, screen.lines.line.value) == (screen.note_says, "chef 8")


async def test_a_box_that_is_not_opened(two_boxes: Shop) -> None:
    """A box shelved at the door needs only whose it is and where it stands."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<3>")
        assert not form(app).counts.display
        form(app).note.value = "shelf 4"
        await pilot.press("f2")

    stored = newest(two_boxes)
    assert (stored.box.opened, stored.box.counted, stored.knives) == (False, 0, ())
    assert stored.box.note == "shelf 4"


async def test_several_matches_are_never_guessed(two_boxes: Shop) -> None:
    """With two customers of a name Enter asks, and the down key chooses."""
    counter(two_boxes, name="Bo Tallis")
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "tallis")
        assert "2 customers fit “tallis”" in dump(app)
        assert form(app).picker.picked is None

        await pilot.press("down", "down", "enter")
        picked = form(app).picker.picked

    assert picked is not None
    assert picked.name == "R. Tallis"


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("counted", "0", "count of 0"),
        ("counted", "10000", "count of 10000"),
        ("counted", "", "no count"),
        ("counted", "3", "You counted 3 and typed 1"),
        ("number", "100", "Box 100 is on the board already"),
        ("day", "31.2", "There is no 31.2"),
        ("line", "chef 400", "400 in"),
    ],
)
async def test_bad_input_gets_a_sentence_and_stays(two_boxes: Shop, field: str, typed: str, said: str) -> None:
    """What cannot be taken is said, nothing is stored, and everything typed is still there."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", "1", "", "chef 8, horn")
        screen = form(app)
        fields = {
            "counted": screen.counted,
            "number": screen.number,
            "day": screen.promised.day,
            "line": screen.lines.line,
        }
        fields[field].value = typed
        await pilot.press("f2")
        await pilot.pause()

        assert said in " ".join(dump(app).split())
        assert fields[field].value == typed
        assert screen.picker.typed.value == "verrin"
        assert [line.typed for line in screen.lines.lines] == ["chef 8, horn"]

    assert len(picture(two_boxes).boxes) == 2


async def test_a_count_that_cannot_be_is_said_at_once(two_boxes: Shop) -> None:
    """Enter does not leave a field whose answer is none: the sentence comes before the next question."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<2>", "<2>", "10000")

        assert "count of 10000" in dump(app)
        assert app.focused is form(app).counted


async def test_up_brings_the_last_line_back(two_boxes: Shop) -> None:
    """A line taken can be brought back, changed and taken again."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        form(app).lines.line.focus()
        await pilot.pause()
        await fill(pilot, "2 chef 8", "<up>", "3 chef 8")
        lines = [line.typed for line in form(app).lines.lines]

    assert lines == ["3 chef 8"]


async def test_leaving_half_way_asks_once(two_boxes: Shop) -> None:
    """The first escape from a form with something typed asks; the second leaves without storing."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<escape>")
        assert not app.left
        assert "Esc again leaves" in dump(app)

        await pilot.press("escape")
        assert (app.left, app.answer) == (True, None)

    assert len(picture(two_boxes).boxes) == 2


async def test_a_power_cut_loses_nothing_up_to_the_last_enter(two_boxes: Shop) -> None:
    """When the app dies half-way, the next form goes on from the last Enter, and once taken in it is let go."""
    async with host(two_boxes).run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<2>", "<2>", "4", "5", "3 chef 8, horn", "bread")

    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        screen = form(app)
        assert "Typed before and not taken in yet" in dump(app)
        assert screen.picker.picked is not None
        assert (screen.picker.picked.name, screen.counted.value, screen.note_says.value) == ("Ms Verrin", "4", "5")
        assert [line.typed for line in screen.lines.lines] == ["3 chef 8, horn", "bread"]
        await pilot.press("f2")

    assert len(newest(two_boxes).knives) == 4
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert not form(app).touched


async def test_leaving_on_purpose_lets_go(two_boxes: Shop) -> None:
    """What was left with two escapes does not come back."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake", "<escape>", "<escape>")
        assert app.left

    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert not form(app).touched


async def test_an_empty_form_is_left_at_once(two_boxes: Shop) -> None:
    """With nothing typed escape leaves without a question."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("escape")
        assert app.left


async def test_hostile_names_are_shown_literally(two_boxes: Shop) -> None:
    """A name that looks like markup, code or another script is offered as it was typed, as is a mark in a line."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        for name in (name for name in HOSTILE_NAMES if len(name) < 40):
            form(app).picker.typed.value = name
            form(app).lines.line.value = f"chef 8, {name}"
            await pilot.pause()

            assert f"new customer “{cell_text(name)}”" in dump(app)
            assert f"9.00 USD · {cell_text(name)}" in dump(app)


async def test_a_hostile_name_is_stored_and_shown(two_boxes: Shop) -> None:
    """A name that looks like markup goes through the whole form to the stub and into the shop file."""
    name = "[/][@click=app.quit]x[/]"
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, name, "", "", "<1>", "<1>", "1", "", f"chef 8, {name}", "<f2>")
        assert isinstance(app.screen, ReceivedScreen)
        assert name in dump(app)

    assert name in {customer.name for customer in customers(two_boxes)}


async def test_an_empty_name_is_asked_for(two_boxes: Shop) -> None:
    """Without a customer nothing is stored and the surname is asked for."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        form(app).came.focus()
        await pilot.pause()
        await fill(pilot, "<1>", "<1>", "1", "", "chef 8", "<f2>")
        assert "Whose is it?" in dump(app)

    assert len(picture(two_boxes).boxes) == 2


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["small", "large"])
async def test_the_form_half_filled(two_boxes: Shop, size: tuple[int, int]) -> None:
    """The form fits both sizes, with the echo of the line being typed."""
    app = host(two_boxes)
    async with app.run_test(size=size) as pilot:
        await fill(pilot, "tallis", "<2>", "<2>", "5", "6", "4 chef 8 dull, black handle ! keep the patina")
        form(app).lines.line.value = "bread 9 big chips"
        await pilot.pause()

        assert_screen(app, f"receive-{size[0]}")
