"""What a typed answer does in each step of a close-out: one shop operation, stored before the next step shows."""

import re
from collections.abc import Callable, Mapping

from queueboard.board.base import ShopScreen
from queueboard.board.forms.hold import ask_about_hold
from queueboard.board.screens.close_faces import Stand
from queueboard.board.screens.close_lines import cost_of_going, things_here
from queueboard.errors import TypedError
from queueboard.phrases.comparing import differs_words
from queueboard.phrases.money import amount, credit_words, too_much_words
from queueboard.phrases.parcels import over_words
from queueboard.phrases.typed import parse_cents, parse_count, parse_tag
from queueboard.phrases.typed_parcels import parse_grams, parse_sides
from queueboard.shop import closing
from queueboard.shop.comparing_names import compare_box
from queueboard.shop.money import take_payment
from queueboard.shop.rehoming import found_among
from queueboard.shop.weighing import weigh_parcel
from queueboard.shop.weight_seen import parcel_weight
from queueboard.values.knife import Knife, Thing
from queueboard.values.new import NewPayment
from queueboard.words import CloseStep, GoesBy, PayWay, Settling


class GoOnTypingError(TypedError):
    """What was typed is a good beginning; the rest is typed behind it."""


Answer = Callable[[ShopScreen[None], Stand, str], None]
"""Takes the screen, where the close-out stands and what was typed; raises TypedError when that cannot be taken."""

IN_A_TRAY = re.compile(r"([0-9]{1,4}(?:-[0-9]{1,3})?) +in +([0-9]{1,4})\b[ :,]*(.*)")
"""A missing knife found in another box's tray, with the reason: 7 in 421 same handle."""

WAYS: Mapping[str, PayWay] = {"1": PayWay.CASH, "2": PayWay.CARD, "3": PayWay.TRANSFER}


def count(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """Take the blind count."""
    screen.attempt(closing.count, stand.close, parse_count(typed))


def tick(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """Tick the tags typed, untick those already ticked; an empty line says that was all."""
    if not typed:
        screen.attempt(closing.ticks_done, stand.close)
        return
    for knife in [knife_typed(stand, word) for word in typed.split()]:
        now = screen.desk.picture.box_by_id(stand.box.box.id).close_out
        if now is None:
            return
        change = closing.untick if knife.id in now.ticked else closing.tick
        if screen.attempt(change, now, knife.id) is None:
            return


def knife_typed(stand: Stand, word: str) -> Knife:
    """The knife of this box that `3` or `417-3` means; TypedError says where a stranger's knife belongs."""
    tag, number = parse_tag(word), stand.box.box.number
    if tag.knife is not None and tag.box != number:
        other = stand.picture.box(tag.box)
        whose = f"box {tag.box}, {other.customer.name}" if other is not None else f"box {tag.box}, which is not open"
        raise TypedError(f"{tag} is not of this box. It belongs to {whose}: take it out and put it back there.")
    place = tag.box if tag.knife is None else tag.knife
    knife = next((k for k in stand.box.knives if k.number == place), None)
    if knife is None:
        raise TypedError(f"Box {number} has no knife {place}. Look at the tag again and type what stands on it.")
    return knife


def missing(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """A tag is a knife found after all, `7 in 421 why` one found in another tray; other letters are the reason."""
    tray = IN_A_TRAY.fullmatch(typed)
    if tray is not None:
        other = stand.picture.box(int(tray[2]))
        if other is None:
            raise TypedError(f"There is no open box {tray[2]}. In whose tray was it?")
        if not tray[3].strip():
            raise GoOnTypingError(f"Type behind it why it lay in the tray of {tray[2]}.")
        screen.attempt(found_among, knife_typed(stand, tray[1]), other.box, tray[3])
    elif any(character.isalpha() for character in typed):
        screen.attempt(closing.why_missing, stand.close, typed)
    elif typed:
        tick(screen, stand, typed)
    else:
        raise TypedError("Type why it goes without them, or the number of a tag you have found. / counts again.")


def comes_with(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """Tick things by line number, + all of them; letters are the reason to go without; an empty line: that was all."""
    here = things_here(stand.box)
    if typed == "+":
        wanted = [thing for thing in here if thing.id not in stand.close.ticked_things]
    elif any(character.isalpha() for character in typed):
        screen.attempt(closing.why_missing, stand.close, typed)
        return
    else:
        wanted = [_thing_on_line(here, parse_count(word)) for word in typed.split()]
    for thing in wanted:
        now = screen.desk.picture.box_by_id(stand.box.box.id).close_out
        if now is None or screen.attempt(closing.tick_thing, now, thing.id) is None:
            return
    if not typed:
        screen.attempt(closing.things_done, stand.close)


def _thing_on_line(here: tuple[Thing, ...], place: int) -> Thing:
    if place > len(here):
        raise TypedError(f"There is no line {place}. Type a number from 1 to {len(here)}.")
    return here[place - 1]


def names(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """+ says the names are the same; anything else changes nothing."""
    if typed == "+":
        found = compare_box(stand.box)
        if found.differences and stand.box.box.goes_by is GoesBy.PARCEL:
            screen.insist(found, f"{differs_words(found)} + once more when it is right all the same.")
        screen.attempt(closing.confirm_names, stand.close)
    elif typed == "-":
        raise TypedError(
            "Stop: do not close the parcel. Find whose name is on the label, put the right label on, "
            "or correct the name on the box (Esc, then e). Then compare again."
        )
    else:
        raise TypedError("Read both names. + when they are the same, - when they are not.")


def label(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """A parcel: + says the label is on and in date. A pick-up: who collects, Enter for the customer."""
    if stand.box.box.goes_by is GoesBy.PICK_UP:
        screen.attempt(closing.confirm_label, stand.close, typed or stand.box.customer.name)
    elif typed == "+":
        settings = screen.desk.picture.settings
        weight = parcel_weight(stand.box, settings, stand.check.going)
        if weight is not None and weight.over_g:
            screen.insist(weight, f"{over_words(weight, settings)}. + once more sends it all the same.")
        screen.attempt(closing.confirm_label, stand.close, "")
    elif any(sign.isdigit() for sign in typed):
        _weigh(screen, stand, typed)
    elif typed == "-":
        raise TypedError(
            "Then it cannot go yet. Buy or renew the label (Esc, then l), and come back: what you have counted stays."
        )
    else:
        raise TypedError("Look at the label. + when it is on the parcel and in date, - when not.")


def _weigh(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """Store what stands on the scale, such as 2.4 kg, or the three sides of the parcel."""
    own = stand.box.box
    if sum(sign in "x*×" for sign in typed.lower()) > 1:
        sides = parse_sides(typed, screen.desk.picture.settings.length_unit)
        screen.attempt(weigh_parcel, own, own.packed_g, sides)
    else:
        screen.attempt(weigh_parcel, own, parse_grams(typed), own.parcel_mm)


def money(screen: ShopScreen[None], stand: Stand, typed: str) -> None:
    """Take the choice typed: 1 to 3 a payment, 4 on account, 5 gone unpaid with the reason behind it."""
    choice, _, rest = typed.replace("*", " ", 1).partition(" ")  # the numeric pad has no space
    owed = stand.box.without_missing.owed_cents
    if owed <= 0 and not typed:
        if owed < 0:
            screen.insist(owed, credit_words(-owed, screen.desk.picture.settings))
        screen.attempt(closing.settle, stand.close, Settling.PAID, "")
    elif choice in WAYS:
        _pay(screen, stand, WAYS[choice], rest.strip())
    elif choice == "4":
        ask_about_hold(screen, stand.box.customer.id)
        screen.attempt(closing.settle, stand.close, Settling.ON_ACCOUNT, rest.strip())
    elif choice == "5" and rest.strip():
        screen.attempt(closing.settle, stand.close, Settling.UNPAID, rest.strip())
    elif choice == "6" and stand.check.staying:
        _insist_on_what_goes(stand)
        screen.attempt(closing.settle, stand.close, Settling.PAID, "")
    elif choice == "5":
        raise GoOnTypingError("Type why it goes unpaid, behind the 5.")
    else:
        raise TypedError("Type 1, 2 or 3 when it is paid, 4 for on account, 5 and the reason when it goes unpaid.")


def _insist_on_what_goes(stand: Stand) -> None:
    """Refuse "what goes is paid" while it is not."""
    costs, paid = cost_of_going(stand.box, stand.check), stand.box.paid_cents
    if paid < costs:
        raise TypedError(
            f"What goes today costs {amount(costs)}, and {amount(paid)} is paid: {amount(costs - paid)} "
            f"is missing. Type how it is paid, such as 1 {amount(costs - paid)}, or 4 for on account."
        )


def _pay(screen: ShopScreen[None], stand: Stand, way: PayWay, amount: str) -> None:
    """Take all that is owed and settle with it, or take the part that was typed and ask for the rest."""
    box = stand.box.without_missing
    cents = parse_cents(amount) if amount else box.owed_cents
    payment = NewPayment(cents=cents, way=way, paid_before_cents=box.paid_cents)
    if cents > max(0, box.owed_cents):
        screen.insist(payment, too_much_words(cents, box.owed_cents, screen.desk.picture.settings))
    if cents < box.owed_cents:
        screen.attempt(take_payment, box.box, payment)
    else:
        screen.attempt(closing.settle, stand.close, Settling.PAID, "", payment if cents > 0 else None)


def go(screen: ShopScreen[None], stand: Stand, typed: str) -> None:  # noqa: ARG001  # answers are all asked alike
    """Anything but + or Enter lets nothing go."""
    raise TypedError("It goes with + or Enter alone. / counts anew, . leaves; until then nothing has gone.")


ANSWERS: Mapping[CloseStep, Answer] = {
    CloseStep.COUNT: count,
    CloseStep.TICK: tick,
    CloseStep.MISSING: missing,
    CloseStep.COMES_WITH: comes_with,
    CloseStep.NAMES: names,
    CloseStep.LABEL: label,
    CloseStep.MONEY: money,
    CloseStep.GO: go,
}
"""Every step; that the box goes at the last one is the screen's own doing."""
