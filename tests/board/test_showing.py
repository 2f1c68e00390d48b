"""Show only: which boxes answer the question, and the order of the questions."""

from queueboard.board.showing import Showing, Shown
from tests.busy_morning import busy_morning


def numbers(shown: Shown) -> list[int]:
    """The numbers of the boxes shown of the busy morning."""
    return [box.box.number for box in shown.boxes(busy_morning())]


def test_each_question_shows_the_boxes_that_answer_it() -> None:
    """Late shows late, will be, tight; today what leaves today; waiting boxes that wait or hold a knife that does."""
    assert numbers(Shown(what=Showing.LATE)) == [411, 420]
    assert numbers(Shown(what=Showing.TODAY)) == [417]
    assert numbers(Shown(what=Showing.WAITING)) == [423]
    assert numbers(Shown(what=Showing.CUSTOMER, customer_id=3)) == [420, 426]
    assert len(numbers(Shown())) == 7


def test_one_key_goes_through_all_questions_and_back() -> None:
    """Late, today, waiting, the customer of the box under the cursor, then all again."""
    here = busy_morning().boxes[3]
    shown, seen = Shown(), []
    for _ in Showing:
        shown = shown.next(here)
        seen.append(shown.what)

    assert seen == [Showing.LATE, Showing.TODAY, Showing.WAITING, Showing.CUSTOMER, Showing.ALL]
    assert Shown(what=Showing.WAITING).next(here).customer_id == here.customer.id


def test_without_a_box_no_customer_is_asked_for() -> None:
    """After waiting comes all, when the cursor is on no box."""
    assert Shown(what=Showing.WAITING).next(None) == Shown()


def test_what_is_shown_is_said() -> None:
    """The sentence has how many of how many, and the customer's name last; for all boxes there is none."""
    morning = busy_morning()

    assert Shown().words(morning) == ""
    assert Shown(what=Showing.LATE).words(morning) == "shows only 2 of 7 boxes, late, will be late, tight"
    assert (
        Shown(what=Showing.CUSTOMER, customer_id=3).words(morning).endswith("one customer: Kitchen of the Blue Heron")
    )
