"""What the board shows, and where its cursor is: four columns, the day on top, the box below."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Key
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.screens.board_drawing import BoardDrawing
from queueboard.board.showing import Showing, Shown
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.columns import Columns
from queueboard.board.widgets.key_line import KeyLineView
from queueboard.board.widgets.tag_entry import TagEntry
from queueboard.board.widgets.top import DayTop
from queueboard.board.widgets.totals import Totals
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife

NOTHING_YET = (
    "The shop is empty.\n\nr   takes in a box: whose it is, how many knives, what was told\n?   shows every key"
)


class BoardView(BoardDrawing):
    """Looking round the board."""

    BINDING_GROUP_TITLE = "Getting about on the board"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left,shift+tab", "aside(-1)", "left", False, tooltip="The column on the left.", id="board.left"),
        Binding("right,tab", "aside(1)", "right", False, tooltip="The column on the right.", id="board.right"),
        Binding("escape", "clear", "clear", False, tooltip="Take all marks away, then show all.", id="board.clear"),
    ]
    AUTO_FOCUS = "ColumnView"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.shown = Shown()
        self.marked: frozenset[int] = frozenset()
        self._meant = self._landed = 0
        self.columns = Columns()
        self.tag_entry = TagEntry(desk)
        self._around = (Static(id="showing", markup=False), Static(id="empty", markup=False))
        self._notice = Static(id="notice", markup=False)

    def compose(self) -> ComposeResult:
        yield DayTop(self.desk)
        showing, empty = self._around
        yield self.columns
        yield empty
        yield showing
        yield Totals()
        yield KeyLineView(id="keys")
        yield self.tag_entry
        yield self._notice

    def on_mount(self) -> None:
        self.show(self.desk.seen)
        self.columns.enter_first()
        if words := self.desk.first_words():
            self.call_after_refresh(lambda: self.say(words, trouble=self.desk.only_read))

    def column(self) -> ColumnView:
        """The column the cursor is in."""
        return self.columns.here()

    def show(self, picture: Picture) -> None:
        """Show a new picture; cursor and scroll stay where they were."""
        if not self._notice.is_attached:
            return
        if self.marked:
            self.marked &= {knife.id for box in picture.boxes for knife in box.on_hand}
        boxes = self.shown.boxes(picture)
        with self.app.batch_update():
            self.columns.fill(boxes, picture, self.marked)
            self._show_around(boxes, picture)
        self.tell()

    def take_picture(self) -> None:
        """Let the desk glance: nobody who moves knives waits for the plan. A screen over this one would ask for it."""
        if len(self.app.screen_stack) == 1:
            self.desk.glance()
        else:
            self.desk.look()

    def _show_around(self, boxes: tuple[BoxPicture, ...], picture: Picture) -> None:
        self.query_one(DayTop).look()
        showing = self.shown.words(picture)
        nothing = NOTHING_YET if not picture.boxes else f"No box: {self.shown.what.value}.\n\nEsc   shows all boxes"
        words = (f"{showing}   / or s goes on   Esc shows all" if showing else "", "" if boxes else nothing)
        for line, said in zip(self._around, words, strict=True):
            line.display = bool(said)
            if said != line.content:
                line.update(said)

    @on(ColumnView.Moved)
    def tell(self) -> None:
        """Say below what is under the cursor, and let its box stand out everywhere."""
        box, knife = self.box_here(), self.knife_here()
        self.query_one(Totals).tell(box, knife, self.desk.seen)
        self.columns.point_at(box)
        self.refresh_bindings()

    def box_here(self) -> BoxPicture | None:
        """The box under the cursor; None in an empty column."""
        row = self.column().current()
        return self.desk.seen.box(row.number) if row is not None else None

    def knife_here(self) -> Knife | None:
        """The knife under the cursor; None on a heading."""
        row = self.column().current()
        return row.knife if row is not None else None

    def jump(self, box: BoxPicture, knife: Knife | None = None) -> None:
        """Put the cursor on a knife, or on the heading of a box where its work stands; show all when it is hidden."""
        if box not in self.shown.boxes(self.desk.seen):
            self.show_only(Shown())
        self.columns.go_to(box, knife)
        self.tell()

    def show_only(self, shown: Shown) -> None:
        """Show all, or only the boxes that answer one question; the cursor stays on its box where that is shown."""
        meant = self.box_meant()
        self.shown = shown
        self.show(self.desk.picture)  # which boxes are late is for the plan to say
        if boxes := shown.boxes(self.desk.picture):
            lands_on = next((b for b in boxes if meant is not None and b.box.id == meant.box.id), boxes[0])
            self.jump(lands_on)
            self._meant, self._landed = (meant or lands_on).box.number, lands_on.box.number

    def box_meant(self) -> BoxPicture | None:
        """The box the person last went to: not the one the cursor landed on because theirs was not shown."""
        here = self.box_here()
        if here is not None and here.box.number == self._landed:
            return self.desk.seen.box(self._meant) or here
        return here

    def action_aside(self, by: int) -> None:
        self.columns.aside(by)
        self.tell()

    def action_clear(self) -> None:
        if self.marked:
            self.marked = frozenset()
            self.show(self.desk.seen)
        elif self.shown.what is not Showing.ALL:
            self.show_only(Shown())

    def give_notice(self, sentence: str, *, trouble: bool, seconds: float = 0) -> None:  # a key ends it
        """The board has one place for all that is said."""
        self.tag_entry.tell("")
        self._notice.display = False
        if sentence:
            self.put(sentence, trouble=trouble)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it at the foot, or beside the number that is typed there; it stays until the next key."""
        notice, entry = self._notice, self.tag_entry
        words = f"! {sentence}" if trouble else sentence
        if entry.display:
            entry.tell(words)
            return
        notice.update(Content(words))
        notice.set_class(trouble, "-trouble")
        notice.display = True

    @property
    def begins_numbers(self) -> bool:
        return self.focused is not self.tag_entry

    def take_first(self, key: Key) -> bool:
        """A digit begins a tag at once, so that a dash or plus typed right behind it is about the tag."""
        entry = self.tag_entry
        if self.focused is entry or not key.character or key.character not in "0123456789":
            return False
        self._notice.display = False
        entry.begin(key.character)
        self.set_focus(entry)
        return True

    def on_key(self) -> None:
        """The next key takes the sentence away, just before what it does: gone any earlier, all is laid out twice."""
        self.app.call_later(setattr, self._notice, "display", False)
