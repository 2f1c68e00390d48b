"""The kinds of an earlier box typed again."""

from hypothesis import given
from hypothesis import strategies as st

from queueboard.intake.again import lines_again
from queueboard.intake.lines import read_line
from queueboard.values.knife import Knife
from queueboard.words import Edge
from tests.shop.carried import knife_of_kind
from tests.shop_settings import KINDS, settings

SHOP = settings()

KNIVES = st.builds(
    knife_of_kind,
    kind=st.sampled_from([kind.name for kind in KINDS]),
    length_mm=st.none() | st.integers(20, 900),
    edge=st.sampled_from(Edge),
)


@given(st.lists(KNIVES, max_size=9))
def test_what_is_typed_again_reads_as_the_same_kinds(knives: list[Knife]) -> None:
    """Kind, length and edge of every knife come back in their order, and no question is asked."""
    lines = [read_line(typed, SHOP) for typed in lines_again(knives, SHOP)]

    again = [line.knife for line in lines for _ in range(line.count)]
    assert [(k.kind, k.length_mm, k.edge) for k in again] == [(k.kind, k.length_mm, k.edge) for k in knives]


def test_alike_knives_share_a_line_and_unknown_kinds_are_left_out() -> None:
    """Nothing of how they came in is typed again; a kind that the shop gave up is not either."""
    chef = knife_of_kind(kind="chef", length_mm=200, edge=Edge.PLAIN)
    gone = knife_of_kind(kind="sickle", length_mm=300, edge=Edge.PLAIN)
    left = knife_of_kind(kind="slim", length_mm=None, edge=Edge.SINGLE_LEFT)

    assert lines_again([chef, chef, gone, left], SHOP) == ("2 chef 200mm", "slim single left")
