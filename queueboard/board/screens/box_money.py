"""The keys about the money of one box."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen


class BoxMoney(ShopScreen[None]):
    """What is charged and paid; about the knife under the cursor, or about the whole box."""

    BINDING_GROUP_TITLE = "The money of the box"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("dollar_sign", "ask('price')", "price by hand", tooltip="Set the price by hand.", id="box.price"),
        Binding("m", "ask('charge')", "put on the bill: chips, rust, discount, return shipping", id="box.charge"),
        Binding("M", "ask('strike')", "take off the bill", id="box.strike"),
        Binding(
            "L",
            "ask('limit')",
            "not above: the most that was agreed",
            tooltip="Note the most that was agreed: not above.",
            id="box.limit",
        ),
        Binding("y", "ask('payment')", "take payment, deposit, money back", id="box.payment"),
    ]
