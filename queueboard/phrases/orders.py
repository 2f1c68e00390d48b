"""A file of orders in words: what would be taken in, what cannot be and why, what was."""

from collections.abc import Iterator

from queueboard.intake.orders import BadLine, Order, Orders
from queueboard.phrases.dates import date_words, many
from queueboard.shop.picture import Picture


def orders_report(orders: Orders, picture: Picture) -> tuple[str, ...]:
    """A line for each order, in the order of the file: the box it would be, or why it cannot be one."""
    lines: list[tuple[int, str]] = [(order.line, order_words(order, picture)) for order in orders.good]
    lines += [(bad.line, bad_line_words(bad)) for bad in orders.bad]
    return (*(text for _, text in sorted(lines)), "", orders_sum(orders))


def order_words(order: Order, picture: Picture) -> str:
    """Line 3: Maren Tallis, Dunmere, 6 knives, comes Tue 1 Dec, back as parcel."""
    return f"line {order.line}: {', '.join(_parts(order, picture))}"


def _parts(order: Order, picture: Picture) -> Iterator[str]:
    box = order.box
    if box.new_customer is not None:
        yield from filter(None, (box.new_customer.name, box.new_customer.town))
    yield "nobody said how many" if box.expected_knives is None else many(box.expected_knives, "knife")
    if box.expected_on is not None:
        yield f"comes {date_words(box.expected_on, picture.now.date())}"
    yield f"back by {box.goes_by.value}"


def bad_line_words(bad: BadLine) -> str:
    """Line 4 is left out: why."""
    return f"line {bad.line} CANNOT BE TAKEN: {bad.why}"


def orders_sum(orders: Orders) -> str:
    """3 orders can be taken in, 1 line cannot."""
    can = f"{many(len(orders.good), 'order')} can be taken in"
    return f"{can}, {many(len(orders.bad), 'line')} cannot." if orders.bad else f"{can}."


def taken_words(numbers: tuple[int, ...]) -> str:
    """3 boxes announced: 431, 432, 433."""
    return f"{many(len(numbers), 'box')} announced: {', '.join(map(str, numbers))}."
