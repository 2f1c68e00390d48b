"""Story 3: job 301, five knives due on Friday; on Wednesday Mr Oake brings a cleaver. All of it is invented."""

from datetime import date, timedelta

from queueboard.board.desk import Desk
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.papers.slips import handle_tags, stub
from queueboard.phrases.late import added_words
from queueboard.settings.rules import minutes_of
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_customer, add_knife, receive_box
from queueboard.values.new import NewBox, NewKnife, NewPromise
from queueboard.words import CameBy, Condition, Edge, GoesBy, Lateness, PromiseKind
from tests.board.dump import dump
from tests.board.host import LARGE, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, chef

WEDNESDAY = NOW + timedelta(days=2)
MINUTES = 2 * 24 * 60
"""From Monday, when the box came in, to Wednesday."""


def five(shop: Shop, *, due: date = date(2026, 11, 13), knives: int = 5) -> BoxPicture:
    """Box 301 of Mr Oake, told for Friday."""
    customer = add_customer(shop, by(), name="Mr Oake")
    new = NewBox(
        customer_id=customer,
        number=301,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=knives,
        knives=tuple(chef(mark=f"nick {n}") for n in range(knives)),
        promise=NewPromise(kind=PromiseKind.DAY, day=due),
    )
    return box(shop, receive_box(shop, by(), new))


def test_the_cleaver_is_301_6_with_its_minutes_and_price(shop: Shop) -> None:
    """Eight minutes, 14.00, count six; the first five keep the time at which they came in."""
    made = five(shop)
    tag = add_knife(shop, by(minutes=MINUTES), made.box, NewKnife(kind="cleaver", edge=Edge.PLAIN))
    now = look(shop, WEDNESDAY)
    after = now.box(301)
    assert after is not None

    assert tag == "301-6"
    cleaver = after.knives[5]
    assert minutes_of(now.settings, cleaver.kind, cleaver.edge, cleaver.condition) == 8
    assert (cleaver.price_cents, cleaver.condition, cleaver.added_at) == (1400, Condition.DULL, WEDNESDAY)
    assert (after.sum.counted, after.sum.added, after.sum.on_hand) == (5, 1, 6)
    assert [knife.added_at for knife in after.knives[:5]] == [None] * 5
    assert after.box.received_at == made.box.received_at
    assert after.promises == made.promises


def test_the_new_tag_and_the_stub_with_six(shop: Shop) -> None:
    """The stub counts six and says how that came; the tag is there to be printed."""
    made = five(shop)
    add_knife(shop, by(minutes=MINUTES), made.box, NewKnife(kind="cleaver", edge=Edge.PLAIN))
    now = look(shop, WEDNESDAY)
    after = now.box(301)
    assert after is not None

    printed = " ".join(stub(after, now).split())
    assert "6, six knives" in printed
    assert "5 counted in + 1 added = 6 on hand" in printed
    assert "\n301-6\n" in handle_tags(after, now)


def test_friday_still_holds_or_it_is_said_that_it_does_not(shop: Shop) -> None:
    """A date with room holds; one that the cleaver breaks is said with the way to split it."""
    made = five(shop)
    tag = add_knife(shop, by(minutes=MINUTES), made.box, NewKnife(kind="cleaver", edge=Edge.PLAIN))
    now = look(shop, WEDNESDAY)
    after = now.box(301)
    assert after is not None
    assert after.forecast.lateness is Lateness.ON_TIME
    assert added_words(tag, after, now.now).endswith("it still holds.")

    over = look(shop, WEDNESDAY + timedelta(days=3)).box(301)
    assert over is not None
    assert "does not hold any more" in added_words(tag, over, WEDNESDAY + timedelta(days=3))
    assert "let the others go first" in added_words(tag, over, WEDNESDAY + timedelta(days=3))


async def test_the_same_through_the_box_screen(shop: Shop) -> None:
    """One key and one line; the screen then shows tag, count, Friday, and what is printed."""
    made = five(shop)
    desk = Desk(shop, "MB", lambda: WEDNESDAY)
    app = Host(desk, lambda: BoxScreen(desk, made.box.id))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("k")
        await fill(pilot, "cleaver")
        await pilot.pause()
        assert isinstance(app.screen, ReceivedScreen)
        shown = " ".join(dump(app).split())

    assert "301-6 is added: 6 knives here." in shown
    assert "Fri 13 Nov" in shown
    assert "it still holds" in shown
    assert "6, six knives" in shown
