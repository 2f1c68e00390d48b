"""Handing a text to the terminal to copy: nobody hears whether it took it, so that is not promised."""

from queueboard.board.base import ShopScreen

HANDED = "Handed to the terminal to copy (some refuse, and nobody hears it)"


def copy_text(screen: ShopScreen[int | None] | ShopScreen[None], text: str, other_way: str) -> None:
    """Hand a text to the terminal (OSC 52), and say the other way to it: v writes it to a file."""
    screen.app.copy_to_clipboard(text)
    screen.say(f"{HANDED}; {other_way}.")
