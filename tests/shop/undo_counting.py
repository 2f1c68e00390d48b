"""Scenarios of undo for counts that differ, and for knives moved or found."""

from queueboard.records.moved import found_of
from queueboard.records.tables import KnifeRow
from queueboard.shop import counting, found_knives, moving, rehoming
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.values.found import FoundKnife
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy
from tests.shop import undo_closing
from tests.shop.place import box, by, chef, counter, parcel
from tests.shop.undo_closing import Act


def one_too_many(shop: Shop) -> BoxPicture:
    """A box in which three were counted, and whose note says two."""
    customer = add_customer(shop, by(), name="R. Tallis", town="Dunmere")
    knives = (chef(mark="nick 0"), chef(mark="nick 1"), chef(mark="blue", length_mm=150))
    new = NewBox(
        customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=3, knives=knives, note_says=2
    )
    return box(shop, receive_box(shop, by(), new))


def found_one(shop: Shop) -> FoundKnife:
    """A knife that lies at the wash sink."""
    found_knives.note_found(shop, by(), kind="chef", length_mm=200, mark="red dot", place="wash sink")
    return found_of(shop.database, "f.settled_us IS NULL")[-1]


def lost_one(shop: Shop) -> BoxPicture:
    """A parcel whose first knife is looked for."""
    number = undo_closing.ready_parcel(shop)
    one = box(shop, number).knives[0]
    with shop.writing(by(), "written straight") as writing:
        writing.change(KnifeRow, one.id, one.version, looking_for=1)
    return box(shop, number)


def do_yes_to_count(shop: Shop) -> Act:
    made = one_too_many(shop)
    return lambda actor: counting.yes_to_count(shop, actor, made.box)


def do_not_theirs(shop: Shop) -> Act:
    made = one_too_many(shop)
    return lambda actor: counting.not_theirs(shop, actor, made.box, "shelf F")


def do_note_found(shop: Shop) -> Act:
    return lambda actor: found_knives.note_found(shop, actor, kind="bread", place="magnet rack")


def do_settle_found(shop: Shop) -> Act:
    found = found_one(shop)
    return lambda actor: found_knives.settle_found(shop, actor, found, "Ms Verrin took it, 11:40")


def do_found_into_box(shop: Shop) -> Act:
    found, made = found_one(shop), parcel(shop)
    return lambda actor: found_knives.found_into_box(shop, actor, found, made.box, "the red dot is theirs")


def do_move_to_box(shop: Shop) -> Act:
    made, other = parcel(shop), counter(shop)
    moving.move_knives(shop, by(), made.knives[1:2], Column.ON_BENCH)
    return lambda actor: rehoming.move_to_box(
        shop, actor, box(shop, made.box.number).knives[1], other.box, "typed on the wrong box"
    )


def do_found_among(shop: Shop) -> Act:
    made, other = lost_one(shop), counter(shop)
    return lambda actor: rehoming.found_among(shop, actor, made.knives[0], other.box, "same handle, wrong tray")
