"""Days that are stored: every one that is taken can be looked at, and the others are refused with a sentence."""

from collections.abc import Callable
from contextlib import suppress
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.phrases.typed import parse_day
from queueboard.shop import announcing, labelling, promising, receiving
from queueboard.shop.correcting import correct_box
from queueboard.shop.days import DAYS_AHEAD, DAYS_BACK
from queueboard.shop.opening import Shop, close_shop
from queueboard.values.new import NewBox, NewLabel, NewPromise
from queueboard.words import CameBy, GoesBy, LabelOwner, LabelState, PromiseKind
from tests import lending
from tests.shop.place import NOW, box, by, chef, parcel, picture, small_shop, state
from tests.shop.undo_announcing import announced

TODAY = NOW.date()


def told(day: date) -> NewPromise:
    """A parcel that leaves by a day."""
    return NewPromise(kind=PromiseKind.SHIPS_BY, day=day, told_to="R. Tallis", reason="belts late")


def label(day: date, state: LabelState = LabelState.HERE) -> NewLabel:
    """A label that dies after a day."""
    return NewLabel(owner=LabelOwner.CUSTOMER, state=state, expires_on=day)


def promises(shop: Shop, day: date) -> None:
    """A new date told for a box that is here."""
    promising.promise(shop, by(), parcel(shop).box, told(day))


def receives(shop: Shop, day: date) -> None:
    """A box comes in with a date told, and another with such a label."""
    customer = receiving.add_customer(shop, by(), name="R. Tallis")
    new = NewBox(
        customer_id=customer,
        came_by=CameBy.MAIL,
        goes_by=GoesBy.PARCEL,
        counted=1,
        knives=(chef(),),
        promise=told(day),
    )
    receiving.receive_box(shop, by(), new)


def labels(shop: Shop, day: date) -> None:
    """A label typed for a box that is here."""
    labelling.set_label(shop, by(), parcel(shop).box, label(day))


def buys(shop: Shop, day: date) -> None:
    """A label bought, its expiry typed from it."""
    number = parcel(shop).box.number
    labelling.set_label(shop, by(), box(shop, number).box, label(TODAY, LabelState.TO_BUY))
    bought = box(shop, number).label
    assert bought is not None
    labelling.label_bought(shop, by(), bought, label(day))


def expects(shop: Shop, day: date) -> None:
    """An announced box, expected on another day."""
    announcing.expect_box(shop, by(), announced(shop).box, 6, day)


WAYS = (promises, receives, labels, buys, expects)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("day", [date.min, date(1, 12, 31), date(1999, 12, 31), date(2222, 2, 2), date.max])
def test_a_day_of_another_age_is_refused(shop: Shop, way: Callable[[Shop, date], None], day: date) -> None:
    """Years that only a slip of the finger names are refused with both days, and the shop can still be looked at."""
    with pytest.raises(TypedError, match=f"{day.isoformat()}.* is (too far from today, {TODAY}|over)"):
        way(shop, day)

    assert day.isoformat() not in str(state(shop))
    picture(shop)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("days", [-DAYS_BACK, 0, DAYS_AHEAD])
def test_the_first_and_the_last_day_are_taken(shop: Shop, way: Callable[[Shop, date], None], days: int) -> None:
    """Both ends of what may be typed on a screen are stored, but for a box to come and a label that is over already."""
    day = TODAY + timedelta(days=days)
    assert parse_day(day.isoformat(), TODAY) == day
    if way in {expects, labels, buys} and days < 0:
        return
    way(shop, day)

    assert day.isoformat() in str(state(shop))


@pytest.fixture(scope="module")
def one_shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder for one shop that many days are told in."""
    return tmp_path_factory.mktemp("days")


NEAR_BOTH_ENDS = st.integers(-DAYS_BACK - 2, DAYS_AHEAD + 2).map(lambda days: TODAY + timedelta(days=days))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    days=st.lists(st.sampled_from([date.min, date.max]) | st.dates() | NEAR_BOTH_ENDS, min_size=1, max_size=4),
    kind=st.sampled_from([kind for kind in PromiseKind if not kind.has_time]),
    carrier_days=st.integers(0, 60),
)
def test_after_any_day_that_was_taken_a_look_works(
    one_shop: Path, days: list[date], kind: PromiseKind, carrier_days: int
) -> None:
    """Whatever is told, of whatever kind and with whatever way of the carrier: it is refused or can be looked at."""
    shop = small_shop(one_shop / f"{len(list(one_shop.iterdir()))}")
    number = parcel(shop, knives=1).box.number
    correct_box(shop, by(), box(shop, number).box, carrier_days=carrier_days)
    for day in days:
        new = NewPromise(kind=kind, day=day, told_to="R. Tallis", reason="belts late")
        with suppress(TypedError):
            promising.promise(shop, by(), box(shop, number).box, new)
        assert box(shop, number).box.carrier_days == carrier_days
    close_shop(shop)
    lending.finished(shop.path)
