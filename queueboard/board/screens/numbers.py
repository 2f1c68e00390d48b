"""The shop's own numbers: the list of their sections, and a section with its lines."""

from collections.abc import Iterator
from dataclasses import replace
from hashlib import sha256
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Key
from textual.widgets import OptionList

from queueboard.board.desk import Desk
from queueboard.board.forms.kept import Kept
from queueboard.board.headed import HEAD
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.paper_out import write_and_say
from queueboard.clean import cell_text
from queueboard.phrases import helping
from queueboard.phrases.number_sections import SECTIONS
from queueboard.phrases.number_sorts import Ways
from queueboard.phrases.own_numbers import (
    Entry,
    Group,
    Rows,
    Section,
    checked_on,
    checked_words,
    line_words,
    with_checked,
)
from queueboard.settings.locate import Path
from queueboard.shop.numbers import take_settings
from queueboard.shop.picture import Picture
from queueboard.shop.settings_now import settings_text

HALF_TYPED = "typed and not stored yet"
_TITLE = 40
"""Cells for the name of a section."""


def ways_of(picture: Picture) -> Ways:
    """By what the shop reads and shows its numbers."""
    settings = picture.settings
    return Ways(currency=settings.currency, length_unit=settings.length_unit, today=picture.now.date())


class OwnNumbersScreen(BoxListScreen):
    """What the list of sections and a section share: the text, and what is done with the whole of it."""

    BINDING_GROUP_TITLE = "The shop's own numbers"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("c", "checked", "checked today", id="numbers.checked"),
        Binding("v", "write", "all of it to a file", id="numbers.write"),
        Binding("t", "take", "take a file in", id="numbers.take"),
        Binding("u", "undo", "undo", id="numbers.undo"),
    ]

    @property
    def text(self) -> str:
        """The settings in force."""
        return settings_text(self.desk.shop)

    def section_here(self) -> Section | None:
        """The section the cursor is on."""
        raise NotImplementedError

    def action_checked(self) -> None:
        section = self.section_here()
        if section is not None:
            self.mark(section.checked_path(), section.title)

    def mark(self, path: Path, what: str) -> None:
        """Write down that it was checked today."""
        text, today = self.text, self.desk.picture.now.date()
        if self.attempt(take_settings, with_checked(text, path, today), seen=text) is not None:
            self.say(f"Checked today: {what}. u takes that back.")

    def action_write(self) -> None:
        write_and_say(self, "settings.toml", self.text, ". Change it as you like; t takes it in again.")

    def action_take(self) -> None:
        from queueboard.board.screens.dialogs.numbers import TakeInDialog

        dialog = TakeInDialog(self.desk)
        self.app.push_screen(dialog, lambda done: self.say(dialog.said) if done else None)

    def action_undo(self) -> None:
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))


class NumbersScreen(OwnNumbersScreen):
    """The sections, each with when it was last checked."""

    HELP = helping.NUMBERS
    BINDING_GROUP_TITLE = "The shop's own numbers: sections"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("N", "leave", "back to the board", id="numbers.leave", show=False)]
    KEYS = "Enter or number opens · c checked · v t file · u undo · ? keys · . back"
    digits = ""
    """The number of a section as far as it is typed; tags mean nothing here."""

    @property
    def begins_numbers(self) -> bool:
        return not self.digits

    def heading(self, picture: Picture) -> Content:
        """What this is."""
        name = cell_text(picture.settings.name)
        return Content.assemble(("The shop's own numbers", "bold"), f" · {name}\nWhat was told and quoted stays told.")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """A line for each section."""
        text, old = self.text, picture.settings.checked.after_days
        return tuple(self._line(place, one, text, old) for place, one in enumerate(SECTIONS, 1))

    def _line(self, place: int, section: Section, text: str, old: int) -> Line:
        day = checked_on(text, section)
        half = f" · {HALF_TYPED}" if is_half_typed(self.desk, section.name) else ""
        words = f"{checked_words(day, old, self.desk.picture.now.date())}{half}"
        return Line(id=section.name, text=Content(f"{place:2}  {section.title:{_TITLE}} {words}"), stops=True)

    def on_key(self, event: Key) -> None:
        """A digit goes to its section, a second one on to those above nine."""
        event.prevent_default()
        if not event.character or event.character not in "0123456789":
            return
        event.stop()
        for typed in (self.digits + event.character, event.character):
            if 1 <= int(typed) <= len(SECTIONS):
                self.digits = typed
                self._put_on(SECTIONS[int(typed) - 1].name)
                return

    def _put_on(self, name: str) -> None:
        options = self.query_one(OptionList)
        options.highlighted = options.get_option_index(name)
        self.say("")

    def section_here(self) -> Section | None:
        line = self.current()
        return next((one for one in SECTIONS if line is not None and one.name == line.id), None)

    def action_choose(self) -> None:
        """Open the section."""
        section, self.digits = self.section_here(), ""
        if section is not None:
            self.app.push_screen(SectionScreen(self.desk, section), lambda _: self.show(self.desk.picture))


class SectionScreen(OwnNumbersScreen):
    """The numbers of one section."""

    HELP = helping.SECTION
    BINDING_GROUP_TITLE = "A section of the shop's own numbers"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus", "add", "add a row to this list", id="section.add"),
        Binding("minus", "take_out", "take this row out", id="section.out"),
    ]
    KEYS = "Enter change · + add · - take out · c checked · u undo · ? keys · . back"

    def __init__(self, desk: Desk, section: Section) -> None:
        super().__init__(desk)
        self.section = section
        self.by_id: dict[str, Entry | Group] = {}

    def heading(self, picture: Picture) -> Content:
        """The section, when it was last checked, and the caution that belongs to it."""
        day, today = checked_on(self.text, self.section), picture.now.date()
        checked = checked_words(day, picture.settings.checked.after_days, today)
        caution = f"\n{self.section.caution}" if self.section.caution else ""
        return Content.assemble((self.section.title, "bold"), f" · {checked}{caution}")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each group under its heading."""
        groups = self.section.groups(self.text, ways_of(picture))
        self.by_id = {}
        return tuple(line for group in groups for line in self._lines(group))

    def _lines(self, group: Group) -> Iterator[Line]:
        if group.heading:
            name = f"list {'/'.join(map(str, group.rows.path))}" if group.rows else f"heading {group.heading}"
            words = f"{group.heading}{'' if group.entries or not group.rows else ': none, + adds one'}"
            self.by_id[name] = group
            yield Line(id=name, text=Content.styled(cell_text(words), HEAD), stops=group.rows is not None)
        for entry in group.entries:
            self.by_id[entry.id] = entry
            half = is_half_typed(self.desk, kept_name(self.section, entry))
            shown = replace(entry, shows=f"{HALF_TYPED} · {entry.shows}") if half else entry
            yield Line(id=entry.id, text=Content(f" {line_words(shown)}"), stops=True)

    def on_key(self, event: Key) -> None:
        """Digits name no box here."""
        event.prevent_default()

    def section_here(self) -> Section | None:
        return self.section

    def action_checked(self) -> None:
        """The carrier under the cursor has a day of its own; else the section."""
        entry = self._here()
        own = [number.path for number in entry.numbers if number.path[-1] == "last_checked"] if entry else []
        if own and entry is not None:
            self.mark(own[0], entry.words)
        else:
            super().action_checked()

    def _here(self) -> Entry | None:
        line = self.current()
        found = self.by_id.get(line.id) if line is not None else None
        return found if isinstance(found, Entry) else None

    def _rows_here(self) -> Rows | None:
        line = self.current()
        found = self.by_id.get(line.id) if line is not None else None
        return found.rows if found is not None else None

    def action_choose(self) -> None:
        """Change the line; on the heading of a list add to it."""
        entry = self._here()
        if entry is not None:
            self._ask(entry)
        else:
            self.action_add()

    def action_add(self) -> None:
        rows = self._rows_here()
        if rows is None:
            lists = [group.rows for group in self.by_id.values() if isinstance(group, Group) and group.rows is not None]
            if len(lists) != 1:
                where = (
                    "Put the cursor on the list it belongs to." if lists else "Nothing is added here: Enter changes."
                )
                self.say(where, trouble=True)
                return
            rows = lists[0]
        self._ask(rows)

    def _ask(self, about: Entry | Rows) -> None:
        from queueboard.board.screens.dialogs.numbers import NumberDialog

        dialog = NumberDialog(self.desk, self.section, about, self.text)
        self.app.push_screen(dialog, lambda done: self._asked(dialog.said if done else ""))

    def action_take_out(self) -> None:
        from queueboard.board.screens.dialogs.numbers import TakeOutDialog

        entry = self._here()
        if entry is None or entry.row is None:
            self.say("Only a row of a list is taken out; Enter empties a number that may be left out.", trouble=True)
            return
        dialog = TakeOutDialog(self.desk, self.section, entry, self.text)
        self.app.push_screen(dialog, lambda done: self._asked(dialog.said if done else ""))

    def _asked(self, said: str) -> None:
        self.show(self.desk.picture)
        if said:
            self.say(said)


def kept_name(section: Section, about: Entry | Rows) -> str:
    """Under what a half-typed line is kept: the same for the same line, and fit for the name of a file."""
    what = f"{about.id} {about.words}" if isinstance(about, Entry) else f"new {about.path}"
    return f"number-{section.name}-{sha256(what.encode()).hexdigest()[:12]}"


def is_half_typed(desk: Desk, name: str) -> bool:
    """True while something is kept that was typed here and never stored; of a section, for any line of it."""
    whole = name if name.startswith("number-") else f"number-{name}-*"
    path = Kept(desk, whole).path
    return next(path.parent.glob(path.name), None) is not None
