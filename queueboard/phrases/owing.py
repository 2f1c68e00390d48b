"""What is owed for boxes that have left, in words; names are people's text, for a literal place only."""

from collections.abc import Sequence

from queueboard.phrases.dates import date_words, many
from queueboard.phrases.money import amount, money
from queueboard.settings.shapes import Settings
from queueboard.shop.owing import Account, OwedBox
from queueboard.words import Settling

HOLD = "HOLD"
NOBODY_OWES = "Nobody owes for anything that has left."


def account_words(account: Account, settings: Settings) -> str:
    """What one customer owes: 86.00 EUR for 2 boxes, the oldest 51 days, HOLD."""
    hold = f", {HOLD}" if account.on_hold else ""
    oldest = f"the oldest {many(account.days, 'day')}" if len(account.boxes) > 1 else many(account.days, "day")
    return f"{money(account.owed_cents, settings)} for {many(len(account.boxes), 'box')}, {oldest}{hold}"


def owed_box_words(owed: OwedBox) -> str:
    """One box: box 417, gone Thu 1 Oct 2026 on account: 46.00 to pay, 40.00 paid; a part of box 322, ..."""
    day = owed.left_at.date()
    part = "" if owed.box.closed_at is not None else "a part of "
    paid = f", {amount(owed.paid_cents)} paid" if owed.paid_cents else ""
    left = owed.settled.value if owed.settled is Settling.UNPAID else f"gone {owed.settled.value}"
    return (
        f"{part}box {owed.box.number}, {left} {date_words(day, day)} {day.year}: {amount(owed.owed_cents)} to pay{paid}"
    )


def owing_sum(accounts: Sequence[Account], settings: Settings) -> str:
    """All of it: 132.00 EUR owed by 2 customers, 1 on HOLD."""
    hold = sum(account.on_hold for account in accounts)
    owed = money(sum(account.owed_cents for account in accounts), settings)
    return f"{owed} owed by {many(len(accounts), 'customer')}" + (f", {hold} on {HOLD}" if hold else "")


def hold_words(account: Account, settings: Settings) -> str:
    """What is asked back before anything more is done on an account that is on hold."""
    most = settings.prices.hold_after_days
    return (
        f"{HOLD}: {account.customer.name} owes {account_words(account, settings).removesuffix(f', {HOLD}')}; "
        f"the shop waits {most}. The same key once more goes on all the same."
    )
