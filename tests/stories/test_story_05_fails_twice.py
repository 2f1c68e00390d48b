"""Story 5: 340-2 is not OK twice and stops in a second look. Names and numbers are invented.

The story's belt of 30 um is P400 here, the belt of the starter shop's chef's knives that is next to it (35 um).
"""

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs.edge import SecondLookDialog
from queueboard.board.screens.edge import EdgeScreen
from queueboard.edges.verdict import Verdict
from queueboard.errors import ReasonNeededError, RuleError
from queueboard.papers.proof_card import card_text
from queueboard.shop import gauging, moving, testing
from queueboard.shop.edge_now import edge_now
from queueboard.shop.opening import Shop
from queueboard.shop.proof import card_of
from queueboard.shop.receiving import receive_box
from queueboard.values.knife import Knife
from queueboard.values.new import NewBox, NewCustomer
from queueboard.words import CameBy, Column, DeclineReason, GoesBy, SecondLook, Stage
from tests.board.dump import dump
from tests.board.host import LARGE, Host, until
from tests.shop.place import box, by, chef, picture

BEFORE, FIRST, SECOND = 1450, (310, 290, 420), (260, 255, 395)
SPOTS = ("heel", "middle", "tip")


def now(shop: Shop, number: int = 2) -> Knife:
    """A knife of box 340 as it stands."""
    return box(shop, 340).knives[number - 1]


def read(shop: Shop, forces: tuple[int, ...], minutes: int, who: str) -> None:
    """340-2 read at its three spots."""
    for spot, force in zip(SPOTS, forces, strict=True):
        gauging.read_spot(shop, by(who, minutes=minutes), now(shop), spot, force)


@pytest.fixture
def failed_once(shop: Shop) -> Shop:
    """340 with three chef's knives; 340-2 was read, not OK, back on P400 by J., and stands at the test again."""
    new = NewBox(
        new_customer=NewCustomer(name="Bo Oake"),
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=3,
        knives=(chef(mark="red"), chef(mark="black"), chef(mark="wood")),
        number=340,
    )
    receive_box(shop, by(), new)
    gauging.read_spot(shop, by("J", minutes=1), now(shop), "heel", BEFORE, Stage.BEFORE)
    moving.move_knives(shop, by("J", minutes=2), box(shop, 340).knives, Column.ON_BENCH)
    moving.move_knives(shop, by("J", minutes=20), box(shop, 340).knives, Column.TESTING)
    read(shop, FIRST, 25, "K")
    testing.judge_edge(shop, by("J", minutes=26), now(shop), ok=False, belt="P400")
    moving.move_knives(shop, by("J", minutes=40), (now(shop),), Column.TESTING)
    return shop


@pytest.fixture
def failed_twice(failed_once: Shop) -> Shop:
    """The same, read once more: better, and over the line of 250 all the same."""
    read(failed_once, SECOND, 45, "J")
    return failed_once


def test_a_plain_move_back_is_no_way_on(failed_twice: Shop) -> None:
    """The second not OK needs a choice: neither a move back nor an OK goes through."""
    shop = failed_twice
    seen = edge_now(shop, now(shop))

    assert seen.line is not None
    assert seen.line.most_gf == 250
    assert seen.judged is not None
    assert seen.judged.verdict is not Verdict.OK
    with pytest.raises(RuleError):
        testing.judge_edge(shop, by("J", minutes=50), now(shop), ok=False)
    with pytest.raises(RuleError):
        moving.move_knives(shop, by("J", minutes=50), (now(shop),), Column.ON_BENCH)
    assert now(shop).column is Column.TESTING


async def test_the_second_look_shows_both_sets_with_initials_and_belt(failed_twice: Shop) -> None:
    """Minus stops there: both sets of readings, who read them, the belt it went back to, and three choices."""
    shop = failed_twice
    desk = Desk(shop, "J", lambda: by(minutes=50).now)
    app = Host(desk, lambda: EdgeScreen(desk, now(shop)))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("minus")
        await until(pilot, lambda: isinstance(app.screen, SecondLookDialog))
        shown = " ".join(dump(app).split())

    assert "heel: before 1450 J; after (310) K, 260 J gf" in shown
    assert "middle: after (290) K, 255 J gf" in shown
    assert "tip: after (420) K, 395 J gf" in shown
    assert "not OK by the gauge, back to P400, today 09:26 J" in shown
    for choice in ("1 one more try", "2 lower the claim and tell", "3 decline without charge"):
        assert choice in shown


@pytest.mark.parametrize(
    ("choice", "stands", "costs"),
    [
        (SecondLook.ONE_MORE, Column.ON_BENCH, True),
        (SecondLook.LOWER, Column.READY, True),
        (SecondLook.DECLINE, Column.READY, False),
    ],
)
def test_the_choice_needs_a_reason_and_decides(
    failed_twice: Shop, choice: SecondLook, stands: Column, costs: bool
) -> None:
    """One more try, a lower claim that the customer is told, or back unsharpened and free: with the reason."""
    shop = failed_twice
    with pytest.raises(ReasonNeededError):
        testing.look_twice(shop, by("K", minutes=55), now(shop), choice, " ")
    testing.look_twice(shop, by("K", minutes=55), now(shop), choice, "soft steel; told Bo Oake by phone")

    assert now(shop).column is stands
    assert (now(shop).declined is DeclineReason.NO_EDGE) is (choice is SecondLook.DECLINE)
    assert (now(shop).charged_cents > 0) is costs


def test_the_choice_with_its_reason_prints_on_the_card(failed_twice: Shop) -> None:
    """The card says what was chosen and why, and what the knife reads; nobody's figure is made nicer."""
    shop = failed_twice
    testing.look_twice(shop, by("K", minutes=55), now(shop), SecondLook.LOWER, "soft steel; told Bo Oake by phone")
    card = card_of(shop, 340)
    assert card is not None
    text = " ".join(card_text(card).split())

    assert "A second look, lower the claim and tell: soft steel; told Bo Oake by phone" in text
    assert "heel (25 mm) 1450 gf 260 gf" in text
    assert "395 gf" in text


def test_the_other_knives_of_the_box_go_on(failed_twice: Shop) -> None:
    """340-1 and 340-3 are tested and ready while 340-2 waits for its second look."""
    shop = failed_twice
    others = [knife for knife in box(shop, 340).knives if knife.number != 2]
    for knife in others:
        if knife.gauge is not None:
            testing.let_go_by_eye(shop, by(minutes=50), knife)
        else:
            testing.judge_edge(shop, by(minutes=50), knife, ok=True)

    assert [knife.column for knife in box(shop, 340).knives] == [Column.READY, Column.TESTING, Column.READY]
    assert picture(shop, minutes=60).box(340) is not None
