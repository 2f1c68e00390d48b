"""Everything of one box: its knives in a table, its facts below, and the keys that change them."""

from typing import ClassVar

from rich.cells import cell_len
from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.coordinate import Coordinate
from textual.widgets import DataTable, Static

from queueboard.board.arriving import arrives
from queueboard.board.desk import Desk
from queueboard.board.screens.box_history import BoxHistoryScreen
from queueboard.board.screens.box_money import BoxMoney
from queueboard.board.screens.box_papers import BoxPapers
from queueboard.board.screens.box_shelf import BoxShelf
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.dialogs import dialog_for
from queueboard.board.screens.edge import open_test
from queueboard.board.screens.undo import UndoScreen
from queueboard.board.widgets.column_lines import CURSOR
from queueboard.clean import cell_text
from queueboard.errors import RuleError
from queueboard.phrases import helping
from queueboard.phrases.boxes import box_signs, box_title, ready_words
from queueboard.phrases.whole_box import HEADS, box_facts, knife_cells, knife_facts, whole_box_cells
from queueboard.shop.moving import move_knives
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column

WIDTHS = (9, 16, 16, 12)
"""Cells for each column but the last, which takes what is left."""
PRICE = 3
"""Which column holds the price; its figures stand under each other."""
KEYS = """+ - move · w wait · x decline · $ price · e correct · p promise · u undo
E test · l label · s scale · m bill · y pay · a pack · c close out · ? keys"""
WHOLE = "box"
"""The key of the first row, which stands for the box as a whole."""


class BoxScreen(BoxMoney, BoxPapers, BoxShelf):
    """One box. Keys act on the knife under the cursor; on the first row, where they can, on the whole box."""

    CSS_PATH = "box.tcss"
    HELP = helping.BOX
    BINDING_GROUP_TITLE = "The box"
    leads_to_tags = True
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus", "move(1)", "move the knife one column on", id="box.on"),
        Binding("minus", "move(-1)", "move the knife one column back", id="box.back"),
        Binding("g", "ready", "the knife straight to ready", id="box.ready"),
        Binding("w", "ask('waiting')", "waiting for something, or goes on", id="box.waiting"),
        Binding("x", "ask('decline')", "decline the knife, or take it after all", id="box.decline"),
        Binding("n", "ask('note')", "note something about the knife", id="box.note"),
        Binding("e", "ask('correct')", "correct what was typed", id="box.correct"),
        Binding("E", "edge", "test its edge", id="box.edge"),
        Binding("f", "ask('lost')", "looked for: found or settled", id="box.lost"),
        Binding("p", "ask('promise')", "tell a date", id="box.promise"),
        Binding("l", "ask('label')", "the return label: type it in", id="box.label"),
        Binding("s", "ask('weigh')", "parcel on the scale: weight and size", id="box.weigh"),
        Binding("a", "ask('packing')", "how far it is: wrapped, boxed, label on, shelf", id="box.packing"),
        Binding("v", "ask('flags')", "make it a rush, the next one, or never to slip", id="box.flags"),
        Binding("k", "ask('add')", "add a knife", id="box.knife"),
        Binding("T", "ask('rehome')", "into another box, or found in its tray", id="box.rehome"),
        Binding("o", "ask('open')", "open an unopened box; what became of an announced one", id="box.open"),
        Binding("i", "ask('thing')", "note something more that it comes with", id="box.thing"),
        Binding("pagedown", "scroll(1)", "more below", id="box.down", priority=True),
        Binding("pageup", "scroll(-1)", "more above", id="box.up", priority=True),
        Binding("h", "history", "what was done to it", id="box.history"),
        Binding("u", "undo", "undo", id="box.undo"),
        Binding("c,slash", "close_out", "close out", id="box.close_out"),
        Binding("escape,q,b,full_stop,comma", "leave", "back to the board", id="box.leave"),
    ]

    def __init__(self, desk: Desk, box_id: int, knife_id: int = 0) -> None:
        super().__init__(desk)
        self.box_id, self.first_id = box_id, knife_id

    def compose(self) -> ComposeResult:
        yield Static("", id="heading")
        yield DataTable[Text](id="knives", cursor_type="row", cell_padding=0)
        yield Static("", id="about")
        with VerticalScroll(id="facts", can_focus=False):
            yield Static("", id="lines")
        yield Static(Content(KEYS), id="keys")

    def on_mount(self) -> None:
        self.show(self.desk.picture)
        self.table.move_cursor(row=_row_of(self.box(), self.first_id))
        self.table.focus()

    def on_resize(self) -> None:
        """The last column takes what is left of the line."""
        self.show(self.desk.picture)

    def action_scroll(self, by: int) -> None:
        """Scroll the facts by a page; the arrows are the table's."""
        facts = self.query_one("#facts")
        facts.scroll_relative(y=by * max(1, facts.size.height - 1), animate=False)

    @property
    def table(self) -> DataTable[Text]:
        """The table of knives."""
        return self.query_one("#knives", DataTable)

    def box(self) -> BoxPicture | None:
        """The box as the newest picture has it; None once it has left the board."""
        return next((b for b in self.desk.picture.boxes if b.box.id == self.box_id), None)

    def under_cursor(self) -> Knife | Box | None:
        """The knife under the cursor, or the box on its own row; None once the box has left."""
        box = self.box()
        if box is None:
            return None
        row = self.table.cursor_row
        return box.knives[row - 1] if 0 < row <= len(box.knives) else box.box

    def knife(self) -> Knife | None:
        """The knife under the cursor; on the box's row a sentence and None."""
        about = self.under_cursor()
        if isinstance(about, Knife):
            return about
        self.say("Put the cursor on a knife first; a whole box moves on the board.")
        return None

    def show(self, picture: Picture) -> None:
        """Show the box anew; the cursor stays on its row."""
        if not self.query("#knives"):
            return
        box = self.box()
        if box is None:
            self.query_one("#heading", Static).update(Content("This box has left the board. q goes back."))
            self.table.clear()
            return
        heading = " · ".join((f"{box_title(box)}", ready_words(box), *box_signs(box, picture.now)))
        self.query_one("#heading", Static).update(Content(heading))
        _fill(self.table, box, picture, self.size.width)
        self.tell_about()
        self.query_one("#lines", Static).update(Content("\n".join(box_facts(box, picture))))

    @on(DataTable.RowHighlighted)
    def tell_about(self) -> None:
        """Say everything about the knife under the cursor."""
        box, about = self.box(), self.under_cursor()
        said = knife_facts(about, box, self.desk.picture) if isinstance(about, Knife) and box is not None else ""
        self.query_one("#about", Static).update(Content(said))
        self.query_one("#about").display = bool(said)
        _move_sign(self.table)

    def action_move(self, by: int) -> None:
        """Move the knife under the cursor a column on or back; an announced box comes in the door."""
        if arrives(self, self.box(), by) or (knife := self.knife()) is None:
            return
        place = ON_BOARD.index(knife.column) + by if knife.on_hand else -1
        if 0 <= place < len(ON_BOARD):
            self.attempt(move_knives, (knife,), ON_BOARD[place])
        else:
            self.say(f"{knife.tag} is {knife.column.value}; there is nothing further on that side.")

    def action_ready(self) -> None:
        """Move the knife under the cursor straight to ready."""
        knife = self.knife()
        if knife is not None:
            self.attempt(move_knives, (knife,), Column.READY)

    def action_edge(self) -> None:
        """Test the knife under the cursor; on the first row the one that waits for it."""
        box, about = self.box(), self.under_cursor()
        if box is not None:
            open_test(self, box, about if isinstance(about, Knife) else None)

    def action_ask(self, what: str) -> None:
        """Open the dialog for the knife under the cursor, or for the box."""
        about = self.under_cursor()
        if about is None:
            return
        try:
            self.app.push_screen(dialog_for(what, self.desk, about))
        except RuleError as error:
            self.say(str(error))

    def action_history(self) -> None:
        """Show what was done to this box."""
        self.app.push_screen(BoxHistoryScreen(self.desk, self.box_id))

    def action_close_out(self) -> None:
        """Lead the box out of the shop."""
        self.app.push_screen(CloseOutScreen(self.desk, self.box_id))

    def action_undo(self) -> None:
        """Choose a step to take back."""
        self.app.push_screen(UndoScreen(self.desk))

    def action_leave(self) -> None:
        self.dismiss(None)


def _row_of(box: BoxPicture | None, knife_id: int) -> int:
    """The row of the knife that somebody asked for by its tag; without one that of the first knife."""
    knives = () if box is None else box.knives
    return next((row for row, knife in enumerate(knives, 1) if knife.id == knife_id), 1)


def _fill(table: DataTable[Text], box: BoxPicture, picture: Picture, width: int) -> None:
    """Fill the table of knives anew; the last column takes what is left of the width."""
    row = table.cursor_row
    table.clear(columns=True)
    widths = (*WIDTHS, max(12, width - sum(WIDTHS) - 2))
    for head, cells in zip((f" {HEADS[0]}", *HEADS[1:]), widths, strict=True):
        table.add_column(Text(head), width=cells)
    rows = {
        WHOLE: whole_box_cells(box),
        **{knife.tag: knife_cells(knife, box, picture.settings) for knife in box.knives},
    }
    dearest = max(cell_len(texts[PRICE]) for texts in rows.values())
    for key, texts in rows.items():
        signed = (f" {texts[0]}", *texts[1:PRICE], texts[PRICE].rjust(dearest), *texts[PRICE + 1 :])
        table.add_row(*(_fitted(text, cells) for text, cells in zip(signed, widths, strict=True)), key=key)
    table.move_cursor(row=min(row, len(box.knives)))


def _move_sign(table: DataTable[Text]) -> None:
    """The row under the cursor carries a sign: no colour is needed to see where one is."""
    for row in range(table.row_count):
        sign, place = CURSOR if row == table.cursor_row else " ", Coordinate(row, 0)
        cell = table.get_cell_at(place)
        if not cell.plain.startswith(sign):
            table.update_cell_at(place, _fitted(f"{sign}{cell.plain[1:]}", WIDTHS[0]))


def _fitted(cell: str, width: int) -> Text:
    """A cell's text, literal, cut with a sign before it touches the next cell."""
    text = Text(cell_text(cell), no_wrap=True)
    text.truncate(width - 1, overflow="ellipsis")
    return text
