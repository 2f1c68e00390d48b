"""Questions about the shop's own numbers: a line, a new row, taking one out, taking a whole file in."""

from pathlib import Path

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.kept_form import KeptForm
from queueboard.board.forms.mistakes import mistake_in
from queueboard.board.screens.numbers import kept_name, ways_of
from queueboard.errors import ChangedError, QueueboardError, SettingsError, TypedError
from queueboard.phrases.belts import belt_words
from queueboard.phrases.own_numbers import Entry, Number, Rows, Section, after_words, with_typed, with_typed_row
from queueboard.plainfiles import read_text
from queueboard.settings.editing import take_out, values_in
from queueboard.shop.belts import belts_to_ask
from queueboard.shop.numbers import take_settings
from queueboard.shop.picture import Picture
from queueboard.shop.settings_now import settings_text

NOTHING = "Nothing was changed."


def in_force(section: Section | None, before: Picture, after: Picture) -> str:
    """What is said of a change, with a question for each belt that may be wrong in it."""
    said = after_words(section, before, after)
    asked = (belt_words(one) for one in belts_to_ask(before.settings, after.settings))
    return " ".join((said, *(f"Look at this belt: {words}" for words in asked)))


class Telling(Dialog):
    """A question that leaves behind what is said of it on the screen below, also where it was asked anew."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.outcome = ""
        self.fresh: Telling | None = None

    @property
    def said(self) -> str:
        """What is said once it is in force."""
        return self.outcome if self.fresh is None else self.fresh.said


class NumberDialog(Telling, KeptForm[bool]):
    """One line of a section, or a new row: each number as the shop types it."""

    hint = "Enter on, at the end it is in force · Esc leaves"

    def __init__(self, desk: Desk, section: Section, about: Entry | Rows, text: str) -> None:
        super().__init__(desk)
        self.section, self.about, self.text = section, about, text
        self.new_text = text
        self.row: tuple[str | int, ...] = ()
        """Where a new row stands in the new text."""
        ways, values = ways_of(desk.picture), values_in(text)
        self.numbers = about.numbers if isinstance(about, Entry) else about.columns
        self.typed = [
            Field(
                one.typed(values, ways) if isinstance(about, Entry) else "",
                hint=one.sort.hint if one.needed else f"{one.unset} · {one.sort.hint}".strip(" ·"),
                check=lambda typed, one=one: one.literal(typed, ways),  # type: ignore[misc]  # one is bound at once
            )
            for one in self.numbers
        ]

    def kept_as(self) -> str:
        return kept_name(self.section, self.about)

    def heading(self) -> str:
        if isinstance(self.about, Rows):
            return f"A new {self.about.one}"
        return f"{self.about.rows.one if self.about.rows else self.section.title}: {self.about.words}"

    def fields(self) -> ComposeResult:
        for number, field in zip(self.numbers, self.typed, strict=True):
            yield Row((number.words, field))
        yield Static(Content(self.section.counts), id="counts")

    def go(self) -> None:
        literals = [self._literal(number, field) for number, field in zip(self.numbers, self.typed, strict=True)]
        if isinstance(self.about, Entry):
            self.new_text = with_typed(self.text, self.about, literals)
        else:
            self.new_text, self.row = with_typed_row(self.text, self.about, literals)
        if self.new_text == self.text:
            self.outcome = NOTHING
            self._leave()
            return
        before = self.desk.picture
        if self.attempt(take_settings, self.new_text, seen=self.text) is not None:
            self.outcome = in_force(self.section, before, self.desk.picture)
            self._leave()

    def _literal(self, number: Number, field: Field) -> str | None:
        """What the settings write for a field; None where it stands as it was."""
        ways = ways_of(self.desk.picture)
        if isinstance(self.about, Entry) and not field.touched:
            return None
        return self.read(field, lambda typed: number.literal(typed, ways))

    def _leave(self) -> None:
        self.kept.forget()
        self.dismiss(True)

    def refused(self, error: QueueboardError) -> None:
        """Say a mistake at its field, without the line that nobody sees here; one elsewhere with its line."""
        asked = zip(((*self.row, *number.path) for number in self.numbers), self.typed, strict=True)
        mistake = mistake_in(error, self.new_text, tuple(asked))
        if mistake is None:
            super().refused(error)
            return
        sentence, field = mistake
        self.say(sentence, trouble=True)
        if field is not None:
            field.focus()

    def anew(self) -> Dialog:
        text, about = settings_text(self.desk.shop), self.about
        if isinstance(about, Entry):
            about = entry_now(self.section, about, text, self.desk.picture)
        self.fresh = NumberDialog(self.desk, self.section, about, text)
        return self.fresh


def entry_now(section: Section, entry: Entry, text: str, picture: Picture) -> Entry:
    """The same line as the newest text has it; ChangedError where it is gone."""
    entries = [one for group in section.groups(text, ways_of(picture)) for one in group.entries]
    alike = [one for one in entries if one.at[: len(entry.at) - 1] == entry.at[:-1] and one.words == entry.words]
    if not alike:
        raise ChangedError(f"{entry.words} is not there any more; nothing was stored.")
    return next((one for one in alike if one.at == entry.at), alike[0])


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]


class TakeOutDialog(Telling):
    """Whether a row goes."""

    hint = "+ or Enter takes it out · - or Esc leaves it"

    def __init__(self, desk: Desk, section: Section, entry: Entry, text: str) -> None:
        super().__init__(desk)
        self.section, self.entry, self.text = section, entry, text

    def heading(self) -> str:
        one = self.entry.rows.one if self.entry.rows else "numbers"
        return f"Take the {one} {self.entry.words} out?"

    def fields(self) -> ComposeResult:
        used = self.entry.rows.used(self.entry.words, self.desk.picture) if self.entry.rows else ""
        yield Static(Content(used or "No open box rests on it."))
        yield Static(Content(f"\n{self.section.counts}"))

    def go(self) -> None:
        before, row = self.desk.picture, self.entry.row
        if row is None:
            raise TypedError("This is no row of a list.")
        if self.attempt(take_settings, take_out(self.text, row), seen=self.text) is not None:
            self.outcome = in_force(self.section, before, self.desk.picture)
            self.dismiss(True)

    def anew(self) -> Dialog:
        text = settings_text(self.desk.shop)
        entry = entry_now(self.section, self.entry, text, self.desk.picture)
        self.fresh = TakeOutDialog(self.desk, self.section, entry, text)
        return self.fresh


class TakeInDialog(Telling):
    """A file of settings in the place of all numbers."""

    hint = "Enter takes it in, or says every first mistake with its line · Esc leaves all as it was"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        usual = desk.shop.path.parent / "papers" / "settings.toml"
        self.path = Field(str(usual) if usual.exists() else "", hint="the file, from the root on, or ~/mine.toml")

    def heading(self) -> str:
        return "Take a whole file of numbers in"

    def fields(self) -> ComposeResult:
        yield Row(("file", self.path))
        yield Static(Content("What was told and quoted stays told. u takes it back."))

    def go(self) -> None:
        if not self.path.value.strip():
            raise TypedError("Type the name of the file.")
        path, before = Path(self.path.value.strip()).expanduser(), self.desk.picture
        if self.attempt(take_settings, read_text(path, "a file of settings")) is not None:
            self.outcome = in_force(None, before, self.desk.picture)
            self.dismiss(True)

    def refused(self, error: QueueboardError) -> None:
        """The mistake with its line, and that nothing was changed."""
        told = _capital(str(error)).rstrip(".")
        super().refused(type(error)(f"{told}. {NOTHING}" if isinstance(error, SettingsError) else str(error)))
