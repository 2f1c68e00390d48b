"""The lines of a day's end: first what a hand is needed for, money and dust tray; then what is open, moved and done."""

from collections.abc import Iterable, Iterator

from textual.content import Content

from queueboard.board.headed import HEAD
from queueboard.board.screens.box_list import Line
from queueboard.papers.text import wrapped
from queueboard.phrases.evening import (
    NO_ALL_CLEAR,
    OVER,
    belt_low_words,
    done_sum_words,
    done_words,
    dust_words,
    label_soon_words,
    labels_soon,
    moved_words,
    not_done_words,
    takings_words,
    to_call,
    tomorrow_words,
    way_words,
)
from queueboard.shop.evening_seen import Evening, first_of_tomorrow, not_done
from queueboard.shop.picture import Picture

Said = tuple[int | None, str]
"""A line, and the number of the box it speaks of."""


def evening_lines(seen: Evening, picture: Picture, width: int) -> tuple[Line, ...]:
    """All lines of a day, none of them wider than *width* cells."""
    make = _Maker(picture, width)
    note = seen.closed.note if seen.closed is not None else ""
    return (
        *(make.section("note", "Note", [(None, note)]) if note else ()),
        *make.section("money", "Money", [(None, takings_words(seen, picture.settings))]),
        *(make.stop(f"way {one.way.value}", way_words(one, picture.settings)) for one in seen.money),
        *make.section("tray", "Dust tray", []),
        make.stop("dust", dust_words(seen, picture.now)),
        make.line("dust caution", NO_ALL_CLEAR),
        *(_open(make, picture) if seen.is_today else (make.line("over", OVER),)),
        *make.section("moved", "Moved, and who was told", _moved(seen), nothing="No date."),
        *make.section("done", "Done", [(None, done_sum_words(seen)), *_done(seen)]),
        *(_tomorrow(make, seen, picture) if seen.is_today else ()),
    )


class _Maker:
    """Makes lines of one width over one picture."""

    def __init__(self, picture: Picture, width: int) -> None:
        self.picture = picture
        self.width = width

    def line(self, id: str, said: str, number: int | None = None) -> Line:
        """A line that breaks between words; the cursor rests on it where an open box is named."""
        text = Content(
            "\n".join(f"  {'  ' if n else ''}{part}" for n, part in enumerate(wrapped(said, self.width - 6)))
        )
        here = number if number is not None and self.picture.box(number) is not None else None
        return Line(id=id, text=text, number=here)

    def stop(self, id: str, said: str) -> Line:
        """A line on which the cursor rests, since a key does something with it."""
        plain = self.line(id, said)
        return Line(id=id, text=plain.text, stops=True)

    def section(self, id: str, title: str, said: Iterable[Said], *, nothing: str = "") -> Iterator[Line]:
        """A heading with its lines."""
        yield Line(id=id, text=Content.assemble((title, HEAD)))
        lines = tuple(said) or (((None, nothing),) if nothing else ())
        for place, (number, words) in enumerate(lines):
            yield self.line(f"{id} {place}", words, number)


def _open(make: _Maker, picture: Picture) -> Iterator[Line]:
    left = [(box.box.number, not_done_words(box, picture.now)) for box in not_done(picture)]
    yield from make.section("left", "Not done, and due", left, nothing="Nothing: all that was due is done.")
    calls = [(box.box.number, said) for box, said in to_call(picture)]
    yield from make.section("call", "To call", calls, nothing="Nobody.")


def _tomorrow(make: _Maker, seen: Evening, picture: Picture) -> Iterator[Line]:
    labels = [
        (picture.box_by_id(due.box_id).box.number, label_soon_words(due, picture)) for due in labels_soon(picture)
    ]
    yield from make.section("labels", "Return labels, today and tomorrow", labels, nothing="None.")
    belts: list[Said] = [(None, belt_low_words(place, picture.now)) for place in seen.belts_low]
    yield from make.section("belts", "Belts low", belts, nothing="None that is known of.")
    first = [(knife.box_number, tomorrow_words(knife, picture)) for knife in first_of_tomorrow(picture)]
    yield from make.section("first", "First tomorrow", first, nothing="Nothing waits for the bench.")


def _moved(seen: Evening) -> list[Said]:
    return [(seen.boxes[one.now.box_id].number, moved_words(one, seen)) for one in seen.moved]


def _done(seen: Evening) -> list[Said]:
    return [(seen.boxes[one.box_id].number, done_words(one, seen)) for one in seen.done]
