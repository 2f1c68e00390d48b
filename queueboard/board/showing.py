"""What the board shows: everything, or only the boxes that answer one question."""

from enum import StrEnum

from queueboard.clean import cell_text
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.words import Lateness


class Showing(StrEnum):
    """The questions, in the order one key goes through them."""

    ALL = "all boxes"
    LATE = "late, will be late, tight"
    TODAY = "leaves today"
    WAITING = "waiting"
    CUSTOMER = "one customer"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What is shown, and of whom."""

    what: Showing = Showing.ALL
    customer_id: int = 0
    """The customer, while one customer is shown."""

    def boxes(self, picture: Picture) -> tuple[BoxPicture, ...]:
        """The boxes that answer the question, in the picture's order."""
        return tuple(box for box in picture.boxes if self._answers(box, picture))

    def _answers(self, box: BoxPicture, picture: Picture) -> bool:
        match self.what:
            case Showing.LATE:
                return box.forecast.lateness is not Lateness.ON_TIME
            case Showing.TODAY:
                leaves_today = box.ship_by is not None and box.ship_by.date() == picture.now.date()
                return leaves_today and not box.box.announced
            case Showing.WAITING:
                return box.box.waiting_for is not None or bool(box.waiting)
            case Showing.CUSTOMER:
                return box.customer.id == self.customer_id
            case Showing.ALL:
                return True

    def next(self, here: BoxPicture | None) -> "Shown":
        """The next question; the customer's is that of the box under the cursor, and left out when there is none."""
        order = list(Showing)
        what = order[(order.index(self.what) + 1) % len(order)]
        if what is Showing.CUSTOMER:
            return Shown(what=what, customer_id=here.customer.id) if here is not None else Shown()
        return Shown(what=what)

    def words(self, picture: Picture) -> str:
        """What is shown, in words, with how many boxes of all; empty for all boxes."""
        if self.what is Showing.ALL:
            return ""
        boxes = self.boxes(picture)
        name = f": {cell_text(boxes[0].customer.name)}" if self.what is Showing.CUSTOMER and boxes else ""
        return f"shows only {len(boxes)} of {len(picture.boxes)} boxes, {self.what.value}{name}"
