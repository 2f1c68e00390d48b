"""What is charged is kept as it was told: at intake by the list, afterwards by hand, whatever the list says later."""

from datetime import UTC, datetime

import pytest

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.money.estimate import estimate
from queueboard.priced_words import ChargeSort, Finding, MoneySort
from queueboard.seedfiles import seed_text
from queueboard.shop import announcing, charging, losing, money, moving, receiving, undoing
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.settings_now import settings_in
from queueboard.values.new import NewAnnounced, NewBox, NewCharge, NewKnife, NewPayment
from queueboard.words import CameBy, Column, Edge, GoesBy, PayWay, Rounding, Settling
from tests.shop.place import box, by, cash, chef, counter, parcel
from tests.shop.undo_charging import gone_as

NOW = datetime(2026, 11, 9, 14, 0, tzinfo=UTC)
CHIPPED = NewKnife(
    kind="chef", edge=Edge.PLAIN, length_mm=200, chips=1, chip_um=2000, findings=(Finding.FRECKLES, Finding.PHOTO)
)
PRICES = """[prices]
chip_mm = 3.00
rust = 4.00
rush_percent = 50
mail_minimum = 25.00
shipping = [{ knives = 3, price = 12.00 }]
rounding = "half even"
tax = { knives = 7.25, shipping = 5 }
"""


def with_prices(shop: Shop, prices: str) -> None:
    """Take in the starter settings with another price list."""
    text = seed_text("settings.toml")
    before, _, rest = text.partition("[prices]\n")
    take_settings(shop, by(), f"{before}{prices}\n{rest[rest.index('# Setting up for a process') :]}")


def received(shop: Shop, *knives: NewKnife, came_by: CameBy = CameBy.MAIL, rush: bool = False) -> BoxPicture:
    """A box that goes back with the shop's own label, or over the counter."""
    customer = receiving.add_customer(shop, by(), name="Oake")
    goes_by = GoesBy.PARCEL if came_by is CameBy.MAIL else GoesBy.PICK_UP
    new = NewBox(customer_id=customer, came_by=came_by, goes_by=goes_by, counted=len(knives), knives=knives, rush=rush)
    return box(shop, receiving.receive_box(shop, by(), new))


@pytest.mark.parametrize("came_by", list(CameBy))
@pytest.mark.parametrize("rush", [False, True])
def test_what_is_said_before_is_what_it_comes_to(shop: Shop, came_by: CameBy, rush: bool) -> None:
    """The sums of a box that is only typed so far are those of the same box taken in: add-ons, rush, minimum, tax."""
    with_prices(shop, PRICES)
    knives = (CHIPPED, chef(), NewKnife(kind="bread", edge=Edge.SERRATED))
    with shop.reading() as database:
        said = estimate(settings_in(database), knives, came_by=came_by, rush=rush, shop_ships=came_by is CameBy.MAIL)

    assert received(shop, *knives, came_by=came_by, rush=rush).totals == said
    assert said.total_cents > 0


def test_the_list_is_charged_at_intake(shop: Shop) -> None:
    """Chip and rust of a knife, rush, minimum and the way back stand as charges, each with its rate of tax."""
    with_prices(shop, PRICES)

    made = received(shop, CHIPPED, rush=True)

    assert [(one.sort, one.cents, one.ppm, one.tax_ppm) for one in made.charges] == [
        (ChargeSort.CHIPS, 600, None, 0),
        (ChargeSort.RUST, 400, None, 0),
        (ChargeSort.RUSH, 0, 500_000, 72_500),
        (ChargeSort.MINIMUM, 2500, None, 72_500),
        (ChargeSort.SHIPPING, 1200, None, 50_000),
    ]
    assert (made.knives[0].price_cents, made.knives[0].tax_ppm) == (900, 72_500)
    assert (made.totals.work_cents, made.totals.rush_cents, made.totals.minimum_cents) == (2850, 950, 0)


def test_what_was_told_stays_whatever_the_list_says_later(shop: Shop) -> None:
    """Dearer prices, another rate and another way of rounding change nothing of a box that is here."""
    with_prices(shop, PRICES)
    made = received(shop, CHIPPED, chef(), rush=True)

    with_prices(
        shop, "chip_mm = 9.00".join(PRICES.split("chip_mm = 3.00")).replace("half even", "up").replace("7.25", "19")
    )

    assert box(shop, made.box.number).totals == made.totals
    assert made.box.rounding is Rounding.HALF_EVEN
    assert received(shop, CHIPPED).charges[0].cents == 1800


def test_a_customers_own_label_costs_nothing(shop: Shop) -> None:
    """With the customer's prepaid label no way back is charged, and over the counter neither."""
    with_prices(shop, PRICES)

    assert ChargeSort.SHIPPING not in {one.sort for one in parcel(shop).charges}
    assert not counter(shop).charges


def test_an_opened_box_is_charged_once_its_knives_are_known(shop: Shop) -> None:
    """A box that was announced has no charges until it is opened; then the list's, and what was typed before stays."""
    with_prices(shop, PRICES)
    customer = receiving.add_customer(shop, by(), name="Oake")
    new = NewAnnounced(customer_id=customer, goes_by=GoesBy.PARCEL, expected_knives=2, expected_on=None)
    number = announcing.announce_box(shop, by(), new)
    charging.add_charge(shop, by(), box(shop, number).box, NewCharge(sort=ChargeSort.SHIPPING, cents=900))

    receiving.open_box(shop, by(), box(shop, number).box, 1, (chef(),))

    charged = {one.sort: one.cents for one in box(shop, number).charges}
    assert charged == {ChargeSort.SHIPPING: 900, ChargeSort.MINIMUM: 2500}


def test_a_knife_struck_or_settled_takes_its_charges_along(shop: Shop) -> None:
    """What was charged for a knife that never was, or that is lost for good, is charged no more."""
    for lose in (True, False):
        made = received(shop, CHIPPED, chef(), came_by=CameBy.COUNTER)
        if lose:
            shop.database.run("UPDATE knife SET looking_for = 1 WHERE id = ?", (made.knives[0].id,))
            shop.work_cache = None  # history does not know of it, and by history looks are read on
            losing.settle_lost(shop, by(), box(shop, made.box.number).knives[0], "paid for by us")
        else:
            receiving.strike_knife(shop, by(), made.knives[0], "typed twice")
        assert not box(shop, made.box.number).charges


def test_an_old_look_is_refused(shop: Shop) -> None:
    """Two windows stand at the same box: the second charge is refused, since the first was not seen."""
    made = counter(shop)
    rust = NewCharge(sort=ChargeSort.RUST, cents=400)
    charging.add_charge(shop, by(), made.box, rust, made.knives[0])

    with pytest.raises(ChangedError, match="changed meanwhile"):
        charging.add_charge(shop, by("K"), made.box, rust, made.knives[0])

    assert len(box(shop, made.box.number).charges) == 1


@pytest.mark.parametrize(
    ("new", "says"),
    [
        (NewCharge(sort=ChargeSort.OTHER, cents=-3), "outside 0.00"),
        (NewCharge(sort=ChargeSort.OTHER, cents=1_000_000_000), "outside 0.00 to 99999.99"),
        (NewCharge(sort=ChargeSort.OTHER, ppm=10_000), "Only a rush or a discount"),
        (NewCharge(sort=ChargeSort.DISCOUNT, ppm=1_500_000), "at most 100 %"),
        (NewCharge(sort=ChargeSort.RUSH, ppm=-1), "Only a rush"),
        (NewCharge(sort=ChargeSort.OTHER, cents=1, text="x" * 121), "what it is for"),
    ],
)
def test_what_cannot_be_charged_is_refused(shop: Shop, new: NewCharge, says: str) -> None:
    """Amounts below nothing or beyond measure, shares of the wrong sort and long words leave no trace."""
    made = counter(shop)

    with pytest.raises(TypedError, match=says):
        charging.add_charge(shop, by(), made.box, new)

    assert not box(shop, made.box.number).charges


def test_a_discount_is_for_the_box(shop: Shop) -> None:
    """A discount on a single knife is a price by hand; as a charge it is refused with a sentence."""
    made = counter(shop)

    with pytest.raises(RuleError, match="for the whole box, not for"):
        charging.add_charge(shop, by(), made.box, NewCharge(sort=ChargeSort.DISCOUNT, cents=1), made.knives[0])


def test_a_limit_is_an_amount(shop: Shop) -> None:
    """A limit of nothing or below is refused; a box above its limit says so."""
    made = counter(shop)
    with pytest.raises(TypedError, match=r"outside 0\.01"):
        charging.set_limit(shop, by(), made.box, 0)

    charging.set_limit(shop, by(), made.box, 1799)

    assert box(shop, made.box.number).above_limit
    charging.set_limit(shop, by(), box(shop, made.box.number).box, 1800)
    assert not box(shop, made.box.number).above_limit


def test_money_back_is_at_most_what_was_paid(shop: Shop) -> None:
    """A deposit can be given back, but no cent more."""
    made = counter(shop)
    money.take_payment(shop, by(), made.box, NewPayment(cents=500, way=PayWay.CASH, paid_before_cents=0))
    back = NewPayment(cents=501, way=PayWay.CASH, paid_before_cents=500, sort=MoneySort.REFUND)

    with pytest.raises(TypedError, match=r"5\.00 was paid for box"):
        money.take_payment(shop, by(), made.box, back)


def test_undo_never_leaves_more_given_back_than_was_paid(shop: Shop) -> None:
    """A payment stays as long as money was given back out of it; undone the other way round it goes."""
    made = counter(shop)
    paid, back = by(minutes=1), by(minutes=2)
    money.take_payment(shop, paid, made.box, cash(1000))
    refund = NewPayment(cents=800, way=PayWay.CASH, paid_before_cents=1000, sort=MoneySort.REFUND)
    money.take_payment(shop, back, box(shop, made.box.number).box, refund)

    with pytest.raises(RuleError, match=r"8\.00 more would be given back"):
        undoing.undo(shop, by(minutes=3), paid.group_id, "typed twice")
    undoing.undo(shop, by(minutes=4), back.group_id, "not given back")
    undoing.undo(shop, by(minutes=5), paid.group_id, "typed twice")
    assert box(shop, made.box.number).paid_cents == 0


def test_money_comes_in_for_a_box_that_is_gone(shop: Shop) -> None:
    """A box gone on account is paid later in parts; an open one is paid at the box."""
    gone = gone_as(shop, Settling.ON_ACCOUNT)

    money.pay_account(shop, by(), gone, cash(1000))
    with pytest.raises(ChangedError, match=r"10\.00 is paid now"):
        money.pay_account(shop, by(), gone, cash(1800))
    money.pay_account(shop, by(), gone, cash(800, paid_before=1000))

    with pytest.raises(RuleError, match="is open"):
        money.pay_account(shop, by(), counter(shop).box, cash(100))


def test_add_ons_go_with_the_knife(shop: Shop) -> None:
    """A knife that is ready keeps its charges; what a box comes to does not hang on where its knives stand."""
    made = received(shop, CHIPPED, came_by=CameBy.COUNTER)
    before = made.totals
    moving.move_knives(shop, by(), made.knives, Column.READY)

    assert box(shop, made.box.number).totals == before
