"""For which knives the gauge is asked: by the shop's rule, fixed when they come to the bench."""

import pytest

from queueboard.errors import RuleError
from queueboard.seedfiles import seed_text
from queueboard.shop.belt_counts import idle_processes
from queueboard.shop.correcting import correct_customer
from queueboard.shop.fitting import fit_belt
from queueboard.shop.moving import move_knives, place_knives
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.promising import set_flags
from queueboard.shop.settings_now import settings_in
from queueboard.shop.undoing import last_undo, steps, undo
from queueboard.words import Column, WhyRead
from tests.shop.place import box, by, counter, parcel


def asked(shop: Shop, made: BoxPicture) -> list[WhyRead | None]:
    """Why the gauge is asked for each knife, once they have come to the bench."""
    knives = box(shop, made.box.number).knives
    move_knives(shop, by(), knives, Column.ON_BENCH)
    return [knife.gauge for knife in box(shop, made.box.number).knives]


def test_every_tenth_of_a_kind_is_read(shop: Shop) -> None:
    """Counted over boxes and trays, whatever comes together."""
    first, second = parcel(shop, knives=8), parcel(shop, knives=13, name="other")

    assert asked(shop, first) == [None] * 8
    assert asked(shop, second) == [None, WhyRead.NTH, *[None] * 9, WhyRead.NTH, None]


def test_a_knife_that_comes_again_keeps_its_answer(shop: Shop) -> None:
    """Back in received and on the bench once more, the same knife is asked for and no other."""
    made = parcel(shop, knives=10)
    before = asked(shop, made)
    move_knives(shop, by(), box(shop, made.box.number).knives, Column.RECEIVED)

    assert asked(shop, made) == before
    assert before.count(WhyRead.NTH) == 1


def test_the_first_on_a_fresh_belt_is_read(shop: Shop) -> None:
    """One knife of the next tray, and none of the tray after it, once the belt has worked."""
    fit_belt(shop, by(), "plain", "16 um")
    first = parcel(shop, knives=3)
    assert asked(shop, first) == [WhyRead.FRESH_BELT, None, None]
    assert asked(shop, counter(shop, name="meanwhile")) == [None, None]


def test_proof_cards_and_complaints_are_read(shop: Shop) -> None:
    """Every knife of a customer with proof cards, and of a box that came back."""
    card, back = counter(shop), counter(shop, name="Ms Lund")
    correct_customer(shop, by(), card.customer, proof_card=True)
    set_flags(shop, by(), back.box, complaint=True)

    assert asked(shop, card) == [WhyRead.PROOF_CARD] * 2
    assert asked(shop, back) == [WhyRead.COMPLAINT] * 2


@pytest.mark.parametrize(
    ("line", "why"),
    [("always = [] ", WhyRead.ALWAYS), ("every = 10 ", None)],
)
def test_the_rule_is_the_shop_s(shop: Shop, line: str, why: WhyRead | None) -> None:
    """A kind that is always read; a shop that reads none by number."""
    new = 'always = ["chef"] ' if why else "every = 0 "
    take_settings(shop, by(), seed_text("settings.toml").replace(line, new))

    assert asked(shop, parcel(shop, knives=10)) == [why] * 10


def test_what_came_to_nothing_is_not_counted(shop: Shop) -> None:
    """A move that is refused at its end, when its knives were counted already, leaves the next count right."""
    first, second = parcel(shop, knives=9), parcel(shop, knives=2, name="other")
    asked(shop, first)
    knives = box(shop, second.box.number).knives

    def refused_at_its_end() -> None:
        with shop.writing(by(), "move_knives") as writing:
            place_knives(writing, knives, Column.ON_BENCH)
            raise RuleError("It is refused after all.")

    with pytest.raises(RuleError):
        refused_at_its_end()

    assert asked(shop, second) == [WhyRead.NTH, None]


def test_a_belt_whose_work_is_taken_back_is_fresh_again(shop: Shop) -> None:
    """One whose first knife went on counts as used until that is undone; done again it is used once more."""
    fit_belt(shop, by(), "plain", "16 um")
    first, second = counter(shop), counter(shop, name="other")
    asked(shop, first)
    move_knives(shop, by(), box(shop, first.box.number).knives, Column.TESTING)
    assert not fresh(shop)
    undo(shop, by(), steps(shop, by().initials)[0].group_id)
    assert fresh(shop) == {"plain"}
    undo(shop, by(), last_step(shop))
    assert not fresh(shop)
    assert WhyRead.FRESH_BELT not in asked(shop, second)


def fresh(shop: Shop) -> frozenset[str]:
    """The processes with a belt that has done nothing yet, asked twice: the second time from what is kept."""
    with shop.reading() as database:
        settings = settings_in(database)
        once, again = (idle_processes(database, settings) for _ in range(2))
    assert once == again
    return again


def last_step(shop: Shop) -> str:
    """The newest action, which is an undo."""
    newest = last_undo(shop, by().initials)
    assert newest is not None
    return newest.group_id
