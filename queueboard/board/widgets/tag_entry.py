"""A tag being typed: large, with the name and the count it stands for, before anything is done with it."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.events import Key
from textual.message import Message
from textual.widgets import Digits, Static

from queueboard.board.desk import Desk
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.phrases.boxes import box_due_word, counts_words, no_knife_words, unopened_words
from queueboard.phrases.knives import knife_line, place_words
from queueboard.phrases.typed import Tag, parse_tag
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife

LONGEST = 10
"""Signs in the longest tag: 999999-999."""

KEYS = "Enter there  + on  * ready  / close out  . open  Esc drop"


class TagEntry(Horizontal, can_focus=True):
    """A tag is being typed: these keys act on it, and so do the letters."""

    BINDING_GROUP_TITLE = "Once a tag is begun"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "take('there')", "go there", tooltip="Put the cursor on this box or knife.", id="tag.there"),
        Binding("plus", "take('on')", "move on", tooltip="Move it one column on; a box asks first.", id="tag.on"),
        Binding("asterisk", "take('ready')", "ready", tooltip="Straight to ready; a box asks first.", id="tag.ready"),
        Binding("slash", "take('close')", "close out", tooltip="Lead the box out of the shop.", id="tag.close"),
        Binding("full_stop,comma", "take('box')", "open box", tooltip="Show everything of the box.", id="tag.box"),
        Binding("backspace", "untype", "take back", False, tooltip="Take back the last sign.", id="tag.untype"),
        Binding("escape", "drop", "drop it", False, tooltip="Drop what was typed.", id="tag.drop"),
    ]

    class Taken(Message):
        """Something is to be done with the tag: there, on, ready, close or box."""

        def __init__(self, what: str) -> None:
            super().__init__()
            self.what = what

    class Dropped(Message):
        """Nothing is typed any more."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(id="tag")
        self.desk = desk
        self.typed = ""
        self.refused = False
        """True from the key that could not take the tag to the next sign typed."""

    def compose(self) -> ComposeResult:
        yield Digits(id="tag-digits")
        with Vertical():
            yield Static(id="tag-name", markup=False)
            yield Static(id="tag-says", markup=False)
            yield Static(KEYS, id="tag-keys", markup=False)
            yield Static(id="tag-told", markup=False)

    def begin(self, character: str) -> None:
        """Show, with the first digit, and take the keys."""
        self.display = True
        self._type(character)
        self.focus()

    def end(self) -> None:
        """Hide, with nothing typed."""
        self.typed = ""
        self.refused = False
        self.display = False

    def on_key(self, event: Key) -> None:
        """Digits go on, but begin anew where the tag was refused; one dash parts box and knife."""
        sign = event.character or ""
        if sign and sign in "0123456789-":
            event.stop()
            if self.refused and sign != "-":
                self._type(sign)
            elif len(self.typed) < LONGEST and not (sign == "-" and "-" in self.typed):
                self._type(self.typed + sign)

    def refuse(self) -> None:
        """The tag could not be taken: it stays to be mended, and a digit begins a new one (the pad has no Esc)."""
        self.refused = True

    def tell(self, sentence: str) -> None:
        """Say it beside the number until the next sign, so that it covers neither that nor a card; empty for none."""
        told = self.query_one("#tag-told", Static)
        told.update(Content(sentence))
        told.display = bool(sentence)
        for line in ("#tag-name", "#tag-says", "#tag-keys"):
            self.query_one(line).display = not sentence

    def _type(self, typed: str) -> None:
        self.typed = typed
        self.refused = False
        self.tell("")
        self.query_one("#tag-digits", Digits).update(typed)
        name, says = echo(typed, self.desk.seen)
        self.query_one("#tag-name", Static).update(Content(name))
        self.query_one("#tag-says", Static).update(Content(says))

    def action_untype(self) -> None:
        if len(self.typed) > 1:
            self._type(self.typed[:-1])
        else:
            self.action_drop()

    def action_drop(self) -> None:
        self.end()
        self.post_message(self.Dropped())

    def action_take(self, what: str) -> None:
        self.post_message(self.Taken(what))


def read_tag(typed: str, picture: Picture) -> tuple[BoxPicture, Knife | None]:
    """The box, and the knife where one is named; TypedError when it is not on the board."""
    tag: Tag = parse_tag(typed.rstrip("-"))
    box = picture.box(tag.box)
    if box is None:
        raise TypedError(f"There is no open box {tag.box}.")
    if tag.knife is None:
        return box, None
    knife = next((knife for knife in box.knives if knife.number == tag.knife), None)
    if knife is None:
        raise TypedError(no_knife_words(f"{tag}", box))
    if not knife.on_hand:
        raise TypedError(f"{knife.tag} is {place_words(knife.column)}.")
    return box, knife


def echo(typed: str, picture: Picture) -> tuple[str, str]:
    """What to show beside the digits: the name, and the count or the knife; or which boxes begin so."""
    try:
        box, knife = read_tag(typed, picture)
    except TypedError as error:
        begin = [str(b.box.number) for b in picture.boxes if str(b.box.number).startswith(typed)]
        return ("…", f"boxes {', '.join(begin[:12])}") if begin else ("", str(error))
    name = cell_text(box.customer.name)
    if knife is not None:
        return name, f"{place_words(knife.column)}: {cell_text(knife_line(knife, picture.settings))}"
    counts = counts_words(box) if box.box.opened else unopened_words(box)
    return name, f"{box_due_word(box, picture.now)}: {counts}"
