"""Moving on the board: the knife under the cursor, what is marked, or a whole tray after one question."""

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_view import BoardView
from queueboard.board.trays import Tray, due_at_test, movable, step_from, trays_by, trays_to_ready
from queueboard.phrases.bench import at_the_test_words, wished_words
from queueboard.phrases.dates import many
from queueboard.shop.picture import BoxPicture
from queueboard.values.knife import Knife
from queueboard.words import Column

TAGS_NAMED = 4
"""Up to so many tags are named in a sentence."""


class BoardMoves(BoardView):
    """Moving knives."""

    BINDING_GROUP_TITLE = "Moving on the board"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus", "move(1)", "on", tooltip="One column on: what is marked, else what the cursor is on.", id="board.on"
        ),
        Binding(
            "minus",
            "move(-1)",
            "back",
            tooltip="One column back; from testing or ready it is work done again.",
            id="board.back",
        ),
        Binding(
            "g", "ready", "ready", tooltip="Straight to ready, when it was tested knife in hand.", id="board.ready"
        ),
        Binding(
            "asterisk,m",
            "mark",
            "mark",
            tooltip="Mark a knife, or all of a box in this column; they move together.",
            id="board.mark",
        ),
    ]

    def marked_knives(self) -> tuple[Knife, ...]:
        """The marked knives, in the order of the board."""
        return tuple(k for box in self.desk.seen.boxes for k in box.on_hand if k.id in self.marked)

    def action_mark(self) -> None:
        """Mark or unmark; the cursor goes to the next knife, so that the key can be pressed again."""
        box, knife, column = self.box_here(), self.knife_here(), self.column()
        if box is None:
            return
        ids = {knife.id} if knife is not None else {k.id for k in box.in_column(column.column)}
        self.marked = self.marked - ids if ids <= self.marked else self.marked | ids
        self.show(self.desk.seen)
        if knife is not None:
            column.next_knife()
        if self.marked:
            self.say(f"{many(len(self.marked), 'knife')} marked.   + on   - back   g ready   Esc takes the marks away")

    def action_move(self, by: int) -> None:
        if self.marked:
            self.move_by(self.marked_knives(), by)
        elif (knife := self.knife_here()) is not None:
            self.move_by((knife,), by)
        elif (box := self.box_here()) is not None:
            self.move_box(box, by, self.column().column)

    def action_ready(self) -> None:
        if self.marked:
            self.move_to(self.marked_knives(), Column.READY)
        elif (knife := self.knife_here()) is not None:
            self.move_to((knife,), Column.READY)
        elif (box := self.box_here()) is not None:
            self.ask_tray(trays_to_ready(box, self.column().column), box)

    def move_by(self, knives: Sequence[Knife], by: int) -> None:
        """Move each knife one column on (1) or back (-1) from where it stands; those at the end of the board stay."""
        groups: dict[Column, list[Knife]] = {}
        for knife in knives:
            to = step_from(knife.column, by)
            if to is not None:
                groups.setdefault(to, []).append(knife)
        if not groups:
            self.say("Ready knives leave by the close-out: c." if by > 0 else "Nothing comes before received.")
        for to, group in groups.items():
            if not self.move_to(group, to):
                return

    def move_to(self, knives: Sequence[Knife], to: Column) -> bool:
        """Move knives and say so; True when it was stored."""
        from queueboard.shop.moving import move_knives

        moving = tuple(knife for knife in knives if knife.column is not to)
        if not moving:
            self.say(f"Already {to.value}.")
            return True
        if len(moving) == 1 and due_at_test(moving[0], to):
            self.test(self.desk.picture.box_by_id(moving[0].box_id), moving[0])
            return False
        if self.attempt(move_knives, moving, to) is None:
            return False
        if self.marked:
            self.marked -= {knife.id for knife in moving}
            self.show(self.desk.seen)
        tags = ", ".join(knife.tag for knife in moving)
        named = tags if len(moving) <= TAGS_NAMED else many(len(moving), "knife")
        said = f"{named} moved to {to.value}.{at_the_test_words(moving, to)}   u takes it back"
        self.say(f"{said}{wished_words(moving, to)}")
        return True

    def test(self, box: BoxPicture, knife: Knife | None) -> None:
        """Test a knife; without one the likeliest of its box."""
        from queueboard.board.screens.edge import open_test

        open_test(self, box, knife)

    def move_box(self, box: BoxPicture, by: int, first: Column | None = None) -> None:
        """Move what of a box stands together one column on (1) or back (-1); what is announced comes in the door."""
        from queueboard.board.arriving import arrives

        if not arrives(self, box, by):
            self.ask_tray(trays_by(box, by, first), box)

    def ask_tray(self, trays: tuple[Tray, ...], box: BoxPicture) -> None:
        """Ask once before a tray moves; say why when there is none."""
        from queueboard.board.screens.tray import TrayDialog

        free = any(movable(knife) for knife in box.on_hand if knife.column is not Column.READY)
        if trays:
            self.app.push_screen(TrayDialog(self.desk, trays), self._tray_moved)
        elif free:
            self.say(self._nothing_moves(box))
        elif box.apart:
            tags = ", ".join(knife.tag for knife in box.apart)
            self.say(
                f"Nothing of {box.box.number} can move: {tags} waits for the yes to the count. w takes the answer.",
                trouble=True,
            )
        elif any(not movable(knife) for knife in box.on_hand):
            self.say(
                f"Nothing of {box.box.number} can move: what is left waits, was declined or is looked for.",
                trouble=True,
            )
        else:
            self.say(self._nothing_moves(box))

    def _nothing_moves(self, box: BoxPicture) -> str:
        number = box.box.number
        if box.box.announced:
            return f"{number} is not here yet.   + it is here   o more"
        return f"Nothing of {number} can move that way." if box.box.opened else f"{number} is not opened: o opens it."

    def _tray_moved(self, sentence: str | None) -> None:
        if sentence is not None:
            self.say(f"{sentence}   u takes it back")
