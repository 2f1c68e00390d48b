"""Finding an open box by surname, tag, town or the last figures of the phone."""

from queueboard.clean import folded
from queueboard.shop.picture import BoxPicture, Picture


def find(picture: Picture, text: str) -> tuple[BoxPicture, ...]:
    """The open boxes that fit what was typed, accents and case aside; in the picture's order.

    Figures find a box number, a tag, or the last figures of a phone; other text finds names and towns.
    """
    wanted = folded(text.strip())
    if not wanted:
        return ()
    return tuple(box for box in picture.boxes if _fits(box, wanted))


def _fits(box: BoxPicture, wanted: str) -> bool:
    number, _, knife = wanted.partition("-")
    if number.isdigit() and (not knife or knife.isdigit()):
        digits = "".join(sign for sign in box.customer.phone if sign.isdigit())
        return str(box.box.number) == number or (len(number) >= 3 and not knife and digits.endswith(number))
    return all(word in folded(f"{box.customer.name} {box.customer.town}") for word in wanted.split())
