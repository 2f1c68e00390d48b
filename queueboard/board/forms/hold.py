"""Asking back before more is done on an account that is open too long."""

from queueboard.board.base import Answer, ShopScreen
from queueboard.phrases.owing import hold_words
from queueboard.shop.owing import held


def ask_about_hold(screen: ShopScreen[Answer], customer_id: int | None) -> None:
    """Say HOLD once for a known customer whose account is on hold; the same once more goes through."""
    if customer_id is None:
        return
    account = held(screen.desk.shop, screen.desk.picture.now, customer_id)
    if account is not None:
        screen.insist(("hold", customer_id), hold_words(account, screen.desk.picture.settings))
