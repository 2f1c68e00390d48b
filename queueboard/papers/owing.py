"""What is owed for boxes that have left, as a list and as plain data."""

from collections.abc import Sequence

from queueboard.papers.facts import Fact
from queueboard.papers.text import page
from queueboard.phrases.owing import NOBODY_OWES, account_words, owed_box_words, owing_sum
from queueboard.settings.shapes import Settings
from queueboard.shop.owing import Account
from queueboard.shop.picture import Picture


def owing_list(accounts: Sequence[Account], settings: Settings) -> str:
    """Each customer with what is owed and its age, box by box, then the sum; names last."""
    if not accounts:
        return page((NOBODY_OWES,))
    lines = [
        line
        for account in accounts
        for line in (
            " · ".join(filter(None, (account_words(account, settings), account.customer.name, account.customer.phone))),
            *(f"    {owed_box_words(owed)}" for owed in account.boxes),
        )
    ]
    return page((*lines, "", owing_sum(accounts, settings)))


def owing_facts(accounts: Sequence[Account], picture: Picture) -> dict[str, Fact]:
    """The same as plain data, the oldest debt first."""
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "currency": picture.settings.currency,
        "owed_cents": sum(account.owed_cents for account in accounts),
        "accounts": [_account(account) for account in accounts],
    }


def _account(account: Account) -> dict[str, Fact]:
    customer = account.customer
    return {
        "customer": {"name": customer.name, "phone": customer.phone, "town": customer.town},
        "owed_cents": account.owed_cents,
        "days": account.days,
        "hold": account.on_hold,
        "boxes": [
            {
                "number": owed.box.number,
                "closed": owed.box.closed_at is not None,
                "left_at": owed.left_at.isoformat(),
                "settled": owed.settled.value,
                "paid_cents": owed.paid_cents,
                "owed_cents": owed.owed_cents,
            }
            for owed in account.boxes
        ],
    }
