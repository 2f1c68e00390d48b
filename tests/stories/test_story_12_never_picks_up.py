"""Story 12: 402 is ready on 3 August, nobody fetches it until 5 November. All of it is invented."""

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.message import MessageScreen
from queueboard.board.screens.shelf import ShelfScreen
from queueboard.cli import main
from queueboard.phrases.messages import message
from queueboard.phrases.phone import answer
from queueboard.phrases.shelf import PAID, UNPAID, shelf_groups, shelf_line, since_words
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop import closing, money, moving, shelving
from queueboard.shop.finding import newest_gone
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.shelving import ShelfBox, on_shelf
from queueboard.values.actor import Actor
from queueboard.values.box import CloseOut
from queueboard.values.new import NewBox, NewKnife, NewPayment, NewPromise
from queueboard.words import CameBy, Column, Edge, GoesBy, PayWay, PromiseKind, Settling
from tests.board.dump import dump
from tests.board.host import LARGE, Host
from tests.cli.schema import valid

TOLD = ((8, 10, NoticeWay.TEXT), (8, 24, NoticeWay.CALL), (9, 14, NoticeWay.LETTER))
"""Three notices, at 7, 21 and 42 days: as the starter settings have it."""


def at(month: int, day: int, hour: int = 15) -> Actor:
    """Somebody on a day of 2026, at an hour of UTC that is in the shop's day."""
    return Actor(initials="K", now=datetime(2026, month, day, hour, tzinfo=UTC))


def seen(shop: Shop, month: int, day: int) -> Picture:
    """The shop as it stands on a day."""
    return look(shop, at(month, day).now)


def box(shop: Shop, month: int = 11, day: int = 5) -> BoxPicture:
    """Box 402."""
    found = seen(shop, month, day).box(402)
    assert found is not None
    return found


def shelf(shop: Shop, month: int, day: int) -> ShelfBox:
    """Box 402 as the shelf has it."""
    (one,) = on_shelf(shop, seen(shop, month, day))
    return one


def close(shop: Shop) -> CloseOut:
    """Its close-out under way."""
    out = box(shop).close_out
    assert out is not None
    return out


@pytest.fixture
def waiting(shop: Shop) -> Shop:
    """402, five knives, 47.00 owed, ready on Monday 3 August, at C4."""
    customer = add_customer(shop, at(7, 30), name="Ines Morel", phone="555 0177", town="Port Ansel")
    prices = (1000, 1000, 900, 900, 900)
    knives = tuple(NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200, price_cents=cents) for cents in prices)
    new = NewBox(
        customer_id=customer,
        number=402,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=5,
        knives=knives,
        promise=NewPromise(kind=PromiseKind.DAY, day=date(2026, 8, 4)),
    )
    receive_box(shop, at(7, 30), new)
    moving.move_knives(shop, at(7, 31), box(shop).knives[:3], Column.READY)
    moving.move_knives(shop, at(8, 3), box(shop).knives[3:], Column.READY)
    shelving.put_on_shelf(shop, at(8, 3), box(shop).box, "C4")
    return shop


@pytest.fixture
def told(waiting: Shop) -> Shop:
    """The same with its three notices."""
    for month, day, way in TOLD:
        text = message(MessageSort.UNCLAIMED, box(waiting, month, day), seen(waiting, month, day))
        shelving.note_notice(waiting, at(month, day), box(waiting).box.id, MessageSort.UNCLAIMED, way, text)
    return waiting


def test_the_shelf_counts_days_from_the_last_knife_that_came_to_ready(waiting: Shop) -> None:
    """Three were ready on 31 July, the box on 3 August: from then on it counts, 94 days to 5 November."""
    assert [shelf(waiting, 8, day).days for day in (3, 4, 10)] == [0, 1, 7]
    assert shelf(waiting, 11, 5).days == 94
    assert shelf(waiting, 11, 5).since.date() == date(2026, 8, 3)


def test_a_notice_is_due_by_the_shops_own_days(waiting: Shop) -> None:
    """At 7, 21 and 42 days; one that was told is due no more, and none after the third."""
    assert shelf(waiting, 8, 9).notice_due is None
    for place, (month, day, way) in enumerate(TOLD, 1):
        assert shelf(waiting, month, day).notice_due == place
        shelving.note_notice(
            waiting, at(month, day), box(waiting).box.id, MessageSort.UNCLAIMED, way, "Please fetch it."
        )
        assert shelf(waiting, month, day).notice_due is None
    assert shelf(waiting, 11, 5).notice_due is None


def test_the_list_has_days_place_money_and_what_was_told(told: Shop) -> None:
    """402 stands first with 94 days at C4, the three notices with day and way, and the line about the law."""
    picture, one = seen(told, 11, 5), shelf(told, 11, 5)

    assert shelf_line(one, picture) == "402 94 days, 47.00 USD to pay, CHECK LOCAL LAW FIRST, at C4"
    assert since_words(one, picture.now.date()) == (
        "5 knives ready since Mon 3 Aug; told Mon 10 Aug by text (K), Mon 24 Aug by call (K), Mon 14 Sep by letter (K)"
    )
    assert not shelf(told, 9, 14).too_long


def test_a_notice_is_of_the_day_on_the_shops_wall(waiting: Shop) -> None:
    """Told on the evening of 10 August, which is the 11th by UTC, it is of the 10th wherever it is shown."""
    box_id = box(waiting).box.id
    shelving.note_notice(waiting, at(8, 11, hour=1), box_id, MessageSort.UNCLAIMED, NoticeWay.CALL, "Please fetch it.")

    assert "told Mon 10 Aug by call" in since_words(shelf(waiting, 8, 12), date(2026, 8, 12))
    assert [notice.told_at.date() for notice in shelving.notices_of_box(waiting, box_id)] == [date(2026, 8, 10)]


def test_paid_and_not_fetched_is_another_list(told: Shop) -> None:
    """Until the money is there it is ready and not paid; then it is paid and not fetched."""
    assert [heading for heading, _ in shelf_groups((shelf(told, 11, 4),))] == [UNPAID]
    paid = NewPayment(cents=4700, way=PayWay.CARD, paid_before_cents=0)
    money.take_payment(told, at(11, 4), box(told).box, paid)

    assert [heading for heading, _ in shelf_groups((shelf(told, 11, 5),))] == [PAID]


def test_the_notice_names_the_knives_and_the_command_says_to_look_the_law_up(
    told: Shop, capsys: pytest.CaptureFixture[str]
) -> None:
    """Five tags, since when, what is owed; below the text the line for the shop. JSON and list are by their schema."""
    path = str(told.path)
    close_shop(told)

    def now() -> datetime:
        return at(11, 5).now

    assert main(["message", "402", "--unclaimed", "--file", path], clock=now) == 0
    said = capsys.readouterr().out
    assert "Your five knives (box 402) are ready to be fetched since Monday 3 August, for 94 days." in said
    assert [line[:7] for line in said.splitlines() if line.startswith("- ")] == [f"- 402-{n}" for n in range(1, 6)]
    assert "47.00 USD to pay." in said
    assert "Check local law first" in said
    assert "555 0177" not in said
    assert main(["message", "402", "--unclaimed", "--json", "--file", path], clock=now) == 0
    facts = valid("message", capsys.readouterr().out)
    assert "heck local law" not in str(facts["text"])
    assert "Check local law first" in str(facts["law"])
    assert main(["shelf", "--file", path], clock=now) == 0
    assert "402 94 days, 47.00 USD to pay, CHECK LOCAL LAW FIRST, at C4: Ines Morel" in capsys.readouterr().out
    assert main(["shelf", "--json", "--file", path], clock=now) == 0
    boxes = valid("shelf", capsys.readouterr().out)["boxes"]
    assert isinstance(boxes, list)
    (one,) = boxes
    assert (one["days"], one["place"], len(one["notices"]), one["too_long"]) == (94, "C4", 3, True)


def test_fetched_at_last_it_is_paid_counted_and_closed(told: Shop) -> None:
    """On 5 November: five counted, 47.00 paid, handed over, closed; the shelf is empty, and the phone knows it."""
    closing.begin_close_out(told, at(11, 5), box(told).box)
    closing.count(told, at(11, 5), close(told), 5)
    closing.confirm_names(told, at(11, 5), close(told))
    closing.confirm_label(told, at(11, 5), close(told), "Ines Morel")
    paid = NewPayment(cents=4700, way=PayWay.CASH, paid_before_cents=0)
    closing.settle(told, at(11, 5), close(told), Settling.PAID, "", paid)
    gone = closing.send_off(told, at(11, 5), close(told))

    assert (len(gone.knives), gone.closed) == (5, True)
    assert on_shelf(told, seen(told, 11, 5)) == ()
    left = newest_gone(told, 402)
    assert left is not None
    assert (left.handed_to, left.owed_cents, len(left.left)) == ("Ines Morel", 0, 5)
    assert len(shelving.notices_of_box(told, left.box.id)) == 3


async def test_the_same_by_keys_on_the_shelf(waiting: Shop, tmp_path: Path) -> None:
    """S shows it; + the notice with the law line; v writes it; / and a digit note that it was told, and how."""
    desk = Desk(waiting, "K", lambda: at(8, 10).now)
    app = Host(desk, lambda: ShelfScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        assert "402 7 days, 47.00 USD to pay, NOTICE 1 DUE, at C4" in dump(app)
        await pilot.press("plus")
        await pilot.pause()
        assert isinstance(app.screen, MessageScreen)
        assert "- 402-5 chef" in dump(app)
        assert "Check local law first" in dump(app)
        await pilot.press("v", "slash", "2")
        await pilot.pause()
        assert "Mon 10 Aug by call (K)" in dump(app)
        await pilot.press("full_stop")
        await pilot.pause()
        assert "told Mon 10 Aug by call (K)" in dump(app)
        assert "NOTICE" not in dump(app).replace("Notices", "")

    paper = (waiting.path.parent / "papers" / "message-402-not-fetched.txt").read_text(encoding="utf-8")
    assert "- 402-1 chef" in paper
    assert "Check local law first" in paper
    assert [notice.way for notice in shelf(waiting, 8, 10).notices] == [NoticeWay.CALL]


def test_the_phone_says_that_it_can_be_fetched(told: Shop) -> None:
    """All five knives done, it can be fetched, 47.00 to pay."""
    assert answer(box(told), seen(told, 11, 5)) == "All five knives done, it can be fetched, 47.00 USD to pay."
