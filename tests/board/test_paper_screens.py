"""The papers of a box behind a key, a loose knife, and a day sheet typed back after a power cut."""

from pathlib import Path

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.loose import LooseScreen
from queueboard.board.screens.type_back import TypeBackScreen
from queueboard.board.sheets import HalfTyped
from queueboard.errors import TypedError
from queueboard.papers import opening
from queueboard.phrases.typed_back import TypedLine, read_typed_line
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.undoing import steps, undo
from queueboard.words import Column, PayWay
from tests.board.answering import COUNTER, PARCEL
from tests.board.dump import dump
from tests.board.host import LARGE, SMALL, Host
from tests.kept import assert_kept
from tests.papers.boxes import hostile_box
from tests.shop.place import NOW, box, by, cash, counter

ON_PAD = {"+": "plus", "-": "minus", "*": "asterisk", ".": "full_stop", "/": "slash"}


def pad(text: str) -> tuple[str, ...]:
    """The keys of the numeric pad for a text, a line end for Enter."""
    return tuple("enter" if sign == "\n" else ON_PAD.get(sign, sign) for sign in text)


async def typed_back(shop: Shop, keys: str, size: tuple[int, int] = SMALL) -> str:
    """Type a sheet back with these keys of the pad; the screen as it then stands."""
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: TypeBackScreen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.press(*pad(keys))
        await pilot.pause()
        return dump(app)


@pytest.mark.parametrize(("size", "name"), [(SMALL, "80"), (LARGE, "120")])
async def test_the_sheet_stands_in_its_own_order(two_boxes: Shop, size: tuple[int, int], name: str) -> None:
    """Down the list, done or not, paid, Enter; a name is shown literally."""
    hostile_box(two_boxes)
    assert_kept(f"type-back-{name}", await typed_back(two_boxes, "+\n-\n", size))


async def test_done_or_not_paid_and_enter_down_the_list(two_boxes: Shop) -> None:
    """With the pad alone knives come to ready and money is taken; each is a step that can be undone."""
    said = await typed_back(two_boxes, "+\n-\n+1*9.00\n2*5.50\n")

    parcel, own = box(two_boxes, PARCEL), box(two_boxes, COUNTER)
    assert sum(knife.column is Column.READY for knife in (*parcel.knives, *own.knives)) == 2
    assert sorted((p.cents, p.way) for p in (*parcel.payments, *own.payments)) == [
        (550, PayWay.CARD),
        (900, PayWay.CASH),
    ]
    assert "to go" in said
    for step in steps(two_boxes, "MB")[:4]:
        undo(two_boxes, by("MB", minutes=1), step.group_id, "typed wrong")
    assert not box(two_boxes, PARCEL).payments
    assert {k.column for k in (*box(two_boxes, PARCEL).knives, *box(two_boxes, COUNTER).knives)} == {Column.RECEIVED}


@pytest.mark.parametrize("again", ["100-1+*9.00\n", "100-1*5.00\n", "100-2*9.00\n"])
async def test_a_line_typed_twice_takes_no_money_twice_unasked(two_boxes: Shop, again: str) -> None:
    """The same line, or the same sum on another line of the box, is asked back; a second Enter takes it."""
    said = await typed_back(two_boxes, f"100-1+*9.00\n{again}")

    assert "! " in said
    assert "9.00 USD" in said
    assert [one.cents for one in box(two_boxes, PARCEL).payments] == [900]
    await typed_back(two_boxes, f"{again}\n")
    assert len(box(two_boxes, PARCEL).payments) == 2


async def test_money_that_came_in_on_the_board_is_not_typed_back_unasked(two_boxes: Shop) -> None:
    """What was stored before the power went stands on paper too; the same sum is asked back with when and by whom."""
    take_payment(two_boxes, by("JO"), box(two_boxes, PARCEL).box, cash(900))

    said = " ".join((await typed_back(two_boxes, "100-1*9.00\n")).split())

    assert "9.00 USD in cash was taken for box 100 today" in said
    assert "by JO" in said
    assert box(two_boxes, PARCEL).paid_cents == 900


async def test_a_sum_that_was_taken_back_is_typed_again_without_a_question(two_boxes: Shop) -> None:
    """After an undo nothing of it is stored, so the right sum is not asked about."""
    await typed_back(two_boxes, "100-1*9.00\n")
    undo(two_boxes, by("MB", minutes=1), steps(two_boxes, "MB")[0].group_id, "typed wrong")
    await typed_back(two_boxes, "100-1*9.50\n")

    assert [one.cents for one in box(two_boxes, PARCEL).payments] == [950]


async def test_it_goes_on_where_it_was_left(two_boxes: Shop) -> None:
    """Left half-way and opened again it stands on the next line; nothing is stored a second time."""
    await typed_back(two_boxes, "+\n+\n.")
    before = len(steps(two_boxes, "MB"))
    said = await typed_back(two_boxes, "")

    assert "5 lines, 3 to go" in said
    assert len(steps(two_boxes, "MB")) == before


def killed_before(shop: Shop, typed: str) -> None:
    """What lies in the folder when the power goes while the first line is being stored."""
    desk = Desk(shop, "MB", lambda: NOW)
    sheet = HalfTyped(desk)
    sheet.begin(sheet.tags[0], typed, ())


async def test_money_stored_before_the_power_went_is_not_taken_again(two_boxes: Shop) -> None:
    """The line was kept with what had been paid until then, so it is seen that its payment came through."""
    killed_before(two_boxes, "+*9.00")
    first = box(two_boxes, int(HalfTyped(Desk(two_boxes, "MB", lambda: NOW)).tags[0].partition("-")[0]))
    move_knives(two_boxes, by("MB"), first.knives[:1], Column.READY)
    take_payment(two_boxes, by("MB"), box(two_boxes, first.box.number).box, cash(900))

    said = await typed_back(two_boxes, "")

    assert "was stored before the power went" in said
    assert box(two_boxes, first.box.number).paid_cents == 900


async def test_what_was_not_stored_when_the_power_went_stands_there_again(two_boxes: Shop) -> None:
    """What had been typed is in the line; Enter stores it, once."""
    killed_before(two_boxes, "+*9.00")

    assert "+*9.00" in await typed_back(two_boxes, "")
    await typed_back(two_boxes, "\n")

    paid = [one.cents for number in (PARCEL, COUNTER) for one in box(two_boxes, number).payments]
    assert paid == [900]


@pytest.mark.parametrize("cents", [500, 900])
async def test_money_that_somebody_else_took_meanwhile_is_said(two_boxes: Shop, cents: int) -> None:
    """The line that the cut cut off is not stored, whoever else took money since, the same sum included."""
    killed_before(two_boxes, "+*9.00")
    due = HalfTyped(Desk(two_boxes, "MB", lambda: NOW)).tags[0]
    number = int(due.partition("-")[0])
    take_payment(two_boxes, by("JO"), box(two_boxes, number).box, cash(cents))

    said = " ".join((await typed_back(two_boxes, "")).split())

    assert f"Meanwhile {cents // 100}.00 USD came in for box {number} by JO" in said
    assert "+*9.00" in said
    assert box(two_boxes, number).paid_cents == cents


async def test_own_money_is_known_to_be_stored_beside_anothers(two_boxes: Shop) -> None:
    """The own payment came through and somebody else took more: the line is done and nothing is taken again."""
    killed_before(two_boxes, "*9.00")
    number = int(HalfTyped(Desk(two_boxes, "MB", lambda: NOW)).tags[0].partition("-")[0])
    take_payment(two_boxes, by("MB"), box(two_boxes, number).box, cash(900))
    take_payment(two_boxes, by("JO"), box(two_boxes, number).box, cash(300, paid_before=900))

    assert "was stored before the power went" in await typed_back(two_boxes, "")


async def test_more_than_is_owed_is_asked_back_once(two_boxes: Shop) -> None:
    """Too much money goes in by a second Enter only, and what was typed stays."""
    said = await typed_back(two_boxes, "*999.00\n")

    assert "*999.00" in said
    assert not [one for number in (PARCEL, COUNTER) for one in box(two_boxes, number).payments]


async def test_a_tag_that_is_not_on_the_sheet_gives_way_to_the_next(two_boxes: Shop) -> None:
    """A refused tag stays to be read; the next one scanned takes its place instead of standing behind it."""
    assert "999-1 is not on this sheet" in await typed_back(two_boxes, "999-1\n")
    await typed_back(two_boxes, "999-1\n101-2\n+\n")

    assert [knife.column for knife in box(two_boxes, COUNTER).knives] == [Column.RECEIVED, Column.READY]


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        ("", TypedLine()),
        ("+", TypedLine(done=True)),
        ("419-7", TypedLine(tag="419-7")),
        ("419-7+*41.00", TypedLine(tag="419-7", done=True, cents=4100)),
        ("419 2*41,5", TypedLine(tag="419", cents=4150, way=PayWay.CARD)),
        ("419-7*41.00", TypedLine(tag="419-7", cents=4100)),
        ("1*9", TypedLine(cents=900)),
        ("- 3*2", TypedLine(done=False, cents=200, way=PayWay.TRANSFER)),
    ],
)
def test_what_may_be_typed(typed: str, line: TypedLine) -> None:
    """A tag, done or not, paid; each may be left out."""
    assert read_typed_line(typed) == line


@pytest.mark.parametrize("typed", ["x", "++", "4*9", "+*", "*1.234", "[red]x[/]"])
def test_what_is_not_understood_is_said(typed: str) -> None:
    """Nothing is guessed."""
    with pytest.raises(TypedError):
        read_typed_line(typed)


async def test_the_sheet_that_was_written_is_the_one_typed_back(two_boxes: Shop) -> None:
    """The order of the paper counts, also when the plan has changed since it was printed."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: DayScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("v")
        await pilot.pause()
    printed = HalfTyped(Desk(two_boxes, "MB", lambda: NOW)).tags
    counter(two_boxes, knives=4, name="Bo Tallis")
    move_knives(two_boxes, by(), box(two_boxes, PARCEL).knives, Column.READY)

    assert HalfTyped(Desk(two_boxes, "MB", lambda: NOW)).tags == printed
    assert len(list((two_boxes.path.parent / "papers").glob("day-*.html"))) == 1


async def test_each_paper_is_behind_a_digit(two_boxes: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """P and a digit write text and page, readable by the owner only, and say where they lie."""
    shown: list[Path] = []

    def no_window(path: Path) -> bool:
        shown.append(path)
        return False

    monkeypatch.setattr(opening, "open_page", no_window)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("P")
        await pilot.pause()
        assert_kept("papers-80", dump(app))
        await pilot.press("escape")
        for digit in "12345":
            await pilot.press("P", digit)
            await pilot.pause()
        assert "Open this page and print it" in dump(app)
    folder = two_boxes.path.parent / "papers"
    names = {path.name.partition("-")[0] for path in folder.iterdir()}
    assert names == {"tags", "stub", "slip", "card", "day"}
    assert {path.suffix for path in shown} == {".html"}
    assert {path.stat().st_mode & 0o777 for path in folder.iterdir()} == {0o600}


@pytest.mark.parametrize("name", ["SSH_CONNECTION", ""])
def test_without_a_window_no_browser_is_tried(name: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Over ssh, and on a machine without a screen, the page is only written."""
    monkeypatch.delenv("DISPLAY", raising=False)
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    monkeypatch.setattr("sys.platform", "linux")
    if name:
        monkeypatch.setenv(name, "10.0.0.1 1 10.0.0.2 22")
        monkeypatch.setenv("DISPLAY", ":0")

    assert not opening.open_page(tmp_path / "page.html")


@pytest.mark.parametrize(("size", "name"), [(SMALL, "80"), (LARGE, "120")])
async def test_a_loose_knife_and_whose_it_could_be(two_boxes: Shop, size: tuple[int, int], name: str) -> None:
    """Tag, customer, last place, time and initials; a hostile name is shown literally."""
    hostile_box(two_boxes)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: LooseScreen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.press(*"chef", "space", *"20")
        await pilot.pause()
        assert_kept(f"loose-{name}", dump(app))


async def test_enter_goes_to_the_box_of_the_loose_knife(two_boxes: Shop) -> None:
    """L on the board, what is seen, Enter: its box opens, the cursor on that knife."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("L", *"nick", "down", "down", "enter")
        await pilot.pause()
        top = app.screen
        assert isinstance(top, BoxScreen)
        knife = top.knife()
    assert knife is not None
    assert knife.tag == "100-3"
    assert knife.mark == "nick 2"
