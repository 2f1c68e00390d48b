"""What comes in: worked counter and mail boxes, and input that cannot be right."""

from dataclasses import replace
from datetime import date, time
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.settings.rules import knife_minutes
from queueboard.shop.correcting import correct_box, correct_customer, give_box_to, merge_customers
from queueboard.shop.opening import Shop
from queueboard.shop.promising import promise
from queueboard.shop.receiving import add_customer, add_knife, customers, next_number, receive_box
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewPromise
from queueboard.words import CameBy, Condition, Edge, GoesBy, LabelState, PromiseKind, WaitingFor
from tests.shop.place import box, by, chef, counter, parcel, picture, planned_box, state


def new_box(shop: Shop, **changes: Any) -> NewBox:  # Any: each field of NewBox has a type of its own
    """A sound box of one chef's knife over the counter, with some fields changed."""
    customer = add_customer(shop, by(), name="Oake")
    sound = NewBox(customer_id=customer, came_by=CameBy.COUNTER, goes_by=GoesBy.PICK_UP, counted=1, knives=(chef(),))
    return replace(sound, **changes)


def test_a_walk_in_of_four_knives(shop: Shop) -> None:
    """Two chef's knives (one chipped), a paring and a bread knife: 31 bench minutes (6 + 15 + 4 + 6).

    Minutes by kind and condition: common practice, no source.
    """
    customer = add_customer(shop, by(), name="Ms Verrin", town="Port Ansel")
    number = receive_box(
        shop,
        by(),
        NewBox(
            customer_id=customer,
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=4,
            knives=(
                chef(),
                NewKnife(kind="chef", edge=Edge.PLAIN, condition=Condition.BIG_CHIPS, length_mm=200),
                NewKnife(kind="paring", edge=Edge.PLAIN),
                NewKnife(kind="bread", edge=Edge.SERRATED),
            ),
            number=214,
            promise=NewPromise(kind=PromiseKind.BY_TIME, day=date(2026, 11, 9), at=time(16, 0)),
        ),
    )
    made = planned_box(shop, number)

    assert [knife_minutes(picture(shop).settings, knife) for knife in made.knives] == [6, 15, 4, 6]
    assert made.forecast.minutes_left == 31
    assert made.ship_by is not None
    assert made.ship_by.strftime("%H:%M") == "16:00"
    assert [knife.tag for knife in made.knives] == ["214-1", "214-2", "214-3", "214-4"]


def test_note_says_twelve_counted_thirteen(shop: Shop) -> None:
    """Both numbers are kept, and the box waits for the customer's yes to the count."""
    new = new_box(shop, counted=13, knives=(chef(),) * 13, note_says=12)

    made = box(shop, receive_box(shop, by(), new)).box

    assert (made.counted, made.note_says, made.waiting_for) == (13, 12, WaitingFor.COUNT)


def test_a_parcel_without_a_label_has_one_to_buy(shop: Shop) -> None:
    """A parcel that came without a return label needs one of the shop's."""
    made = box(shop, receive_box(shop, by(), new_box(shop, goes_by=GoesBy.PARCEL)))

    assert made.label is not None
    assert made.label.state is LabelState.TO_BUY


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"counted": 0, "knives": ()}, "count of 0 is outside"),
        ({"counted": 10_000}, "count of 10000 is outside"),
        ({"counted": 2}, "counted 2 and typed 1"),
        ({"number": 0}, "outside 1 to 9999"),
        ({"note_says": -1}, "cannot say -1"),
        ({"carrier_days": 61}, "61 carrier days"),
        ({"knives": (chef(length_mm=5),)}, "length of 5 mm"),
        ({"knives": (chef(length_mm=2000),)}, "length of 2000 mm"),
        ({"knives": (NewKnife(kind="sword", edge=Edge.PLAIN),)}, "no kind called 'sword'"),
        ({"knives": (NewKnife(kind="chef", edge=Edge.PLAIN, price_cents=-3),)}, "outside 0.00"),
        ({"knives": (NewKnife(kind="chef", edge=Edge.PLAIN, mark="x\x00y"),)}, "mark"),
        ({"things": ("  ",)}, "comes with is empty"),
        ({"promise": NewPromise(kind=PromiseKind.BY_TIME, day=date(2026, 11, 9))}, "needs the time of day"),
        ({"opened": False}, "not opened has no count"),
    ],
)
def test_what_cannot_be_right_is_refused_whole(shop: Shop, changes: dict[str, object], words: str) -> None:
    """A wrong figure gets a sentence with the value, and nothing of the box is stored."""
    new = new_box(shop, **changes)
    before = state(shop)

    with pytest.raises(TypedError, match=words):
        receive_box(shop, by(), new)

    assert state(shop) == before


def test_a_number_on_the_board_is_not_given_twice(shop: Shop) -> None:
    """A second box with the same number is refused, and the next free number is offered."""
    taken = counter(shop).box.number

    with pytest.raises(TypedError, match=f"next free number is {next_number(shop)}"):
        receive_box(shop, by(), new_box(shop, number=taken))


@pytest.mark.parametrize("name", ["[red]x[/]", "[/]", "[@click=app.quit]x[/]", "محمد", "🔪" * 20, "x" * 300])
def test_names_stand_as_they_were_typed(shop: Shop, name: str) -> None:
    """Text that looks like markup, right-to-left, emoji and long names are stored as they are."""
    made = parcel(shop, name=name)

    assert made.customer.name == name


@pytest.mark.parametrize("name", ["", "   ", "x" * 301, "a\x00b"])
def test_names_that_cannot_be_kept_get_a_sentence(shop: Shop, name: str) -> None:
    """An empty name, one of 301 signs and one with a NUL are refused."""
    with pytest.raises(TypedError):
        add_customer(shop, by(), name=name)

    assert customers(shop) == ()


def test_an_escape_sequence_is_taken_out(shop: Shop) -> None:
    """A name that would colour the terminal loses its control signs and keeps its letters."""
    add_customer(shop, by(), name="Ta\x1b[31mll\x1b]0;title\x07is")

    assert [customer.name for customer in customers(shop)] == ["Tallis"]


def test_a_knife_added_later(shop: Shop) -> None:
    """The new knife gets the next tag; the others keep their time."""
    made = counter(shop, knives=5)

    tag = add_knife(shop, by(minutes=60), made.box, NewKnife(kind="cleaver", edge=Edge.PLAIN))

    after = box(shop, made.box.number)
    assert tag == f"{made.box.number}-6"
    assert after.knives[:5] == made.knives


def test_a_second_promise_needs_who_and_why(shop: Shop) -> None:
    """The first date stays; the second is kept beside it with who was told and why."""
    made = parcel(shop)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 18))
    with pytest.raises(TypedError, match="who was told and why"):
        promise(shop, by(), made.box, later)

    promise(shop, by(), made.box, replace(later, told_to="R. Tallis", reason="belts came late"))

    days = [(told.day, told.told_to) for told in box(shop, made.box.number).promises]
    assert days == [(date(2026, 11, 13), "R. Tallis"), (date(2026, 11, 18), "R. Tallis")]


def test_a_box_given_to_the_right_customer(shop: Shop) -> None:
    """A box typed for the wrong person goes to the right one, knives and all."""
    made = parcel(shop)
    add_customer(shop, by(), name="S. Tallis")
    right = next(customer for customer in customers(shop) if customer.name == "S. Tallis")

    give_box_to(shop, by(), made.box, right)

    assert box(shop, made.box.number).customer.name == "S. Tallis"


def test_a_box_given_to_somebody_new(shop: Shop) -> None:
    """A new customer is stored together with the giving; when that is refused, nobody is stored."""
    made = parcel(shop)
    give_box_to(shop, by(), made.box, NewCustomer(name="S. Tallis", town="Dunmere"))
    before = state(shop)

    with pytest.raises(ChangedError):
        give_box_to(shop, by("K"), made.box, NewCustomer(name="T. Oake"))

    assert box(shop, made.box.number).customer.town == "Dunmere"
    assert state(shop) == before


def test_a_customer_entered_twice(shop: Shop) -> None:
    """The boxes of the second entry go to the first, and the second is offered no more."""
    first, second = parcel(shop), parcel(shop, name="Tallis, Rowan")

    merge_customers(shop, by(), first.customer, second.customer)

    assert [customer.name for customer in customers(shop)] == ["R. Tallis"]
    assert box(shop, second.box.number).customer == first.customer
    with pytest.raises(RuleError, match="not in the shop file"):
        give_box_to(shop, by(), first.box, second.customer)


def test_a_corrected_number_carries_the_tags(shop: Shop) -> None:
    """The tags follow a corrected box number; a taken one is refused."""
    made, other = parcel(shop), counter(shop)
    with pytest.raises(TypedError, match="on the board already"):
        correct_box(shop, by(), made.box, number=other.box.number)

    correct_box(shop, by(), made.box, number=777)

    assert [knife.tag for knife in box(shop, 777).knives] == ["777-1", "777-2", "777-3"]


def test_a_corrected_name(shop: Shop) -> None:
    """A misspelt name is put right everywhere."""
    made = parcel(shop)

    correct_customer(shop, by(), made.customer, name="Rowan Tallis")

    assert box(shop, made.box.number).customer.name == "Rowan Tallis"


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)
@given(text=st.text(max_size=320))
def test_any_text_is_stored_or_refused_with_a_sentence(shop: Shop, text: str) -> None:
    """Whatever is typed as a name is kept without control signs, or refused; the file never breaks."""
    try:
        customer = add_customer(shop, by(), name=text)
    except TypedError:
        return
    stored = next(c.name for c in customers(shop) if c.id == customer)
    assert stored
    assert all(sign.isprintable() or sign == "\u200d" for sign in stored if ord(sign) < 0xA0)
