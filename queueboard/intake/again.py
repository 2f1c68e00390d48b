"""The kinds of an earlier box as lines to be taken again: kind, length, edge; nothing of how those knives came in."""

from collections.abc import Sequence
from itertools import groupby

from queueboard.intake.words_typed import EDGE_WORDS
from queueboard.settings.shapes import Settings
from queueboard.values.knife import Knife
from queueboard.words import Edge


def lines_again(knives: Sequence[Knife], settings: Settings) -> tuple[str, ...]:
    """The shorthand of knives of the same kinds, alike ones that stand together in one line.

    Kinds that the shop does not have any more are left out. Lengths are in mm, so that they answer no question.
    """
    known = [knife for knife in knives if settings.kind(knife.kind) is not None]
    looks = groupby(known, key=lambda knife: (knife.kind, knife.length_mm, knife.edge))
    return tuple(_line(kind, length_mm, edge, len(list(alike)), settings) for (kind, length_mm, edge), alike in looks)


def _line(kind: str, length_mm: int | None, edge: Edge, count: int, settings: Settings) -> str:
    known = settings.kind(kind)
    usual = known is not None and known.edge is edge
    typed = next(word for word, meant in EDGE_WORDS.items() if meant is edge)
    words = (str(count) if count > 1 else "", kind, f"{length_mm}mm" if length_mm else "", "" if usual else typed)
    return " ".join(filter(None, words))
