"""A form in which so much is typed that it is kept from Enter to Enter, and that leaving half-way asks once."""

from typing import TypeVar

from textual import on
from textual.widget import Widget
from textual.widgets import Input

from queueboard.board.forms.fields import Choice, Field, Tick, Turned
from queueboard.board.forms.form import Form
from queueboard.board.forms.kept import Kept
from queueboard.board.forms.knife_lines import KnifeLines
from queueboard.board.forms.picker import CustomerPicker

Answer = TypeVar("Answer")
Part = Field | Choice[object] | Tick | KnifeLines | CustomerPicker
"""Every part says what it holds as one text, and takes such a text back."""


class KeptForm(Form[Answer]):
    """Goes on where a power cut broke off. Done, or left on purpose, it lets go of what was kept."""

    asked_to_leave: bool = False
    unkept: bool = False
    """True while the disk does not take what is typed here."""

    def kept_as(self) -> str:
        """The name under which this form is kept; the same for the same question."""
        raise NotImplementedError

    def on_mount(self) -> None:
        self.kept = Kept(self.desk, self.kept_as())
        before, parts = self.kept.read(), self.parts()
        if len(before) != len(parts):
            return
        with self.prevent(Input.Changed):
            for part, text in zip(parts, before, strict=True):
                part.put_back(text)
        self.changed()
        self.say("Typed before and not taken in yet: look it through and go on, or Esc twice lets it go.")

    def parts(self) -> list[Part]:
        """Everything that holds something typed, in the order of the screen."""
        kinds = (Field, Choice, Tick, KnifeLines, CustomerPicker)
        return [part for part in self.query("*") if isinstance(part, kinds)]

    @property
    def touched(self) -> bool:
        """True when something was typed or chosen."""
        return any(part.touched for part in self.parts())

    @on(KnifeLines.Changed)
    def keep(self) -> None:
        """Keep what stands here now; where the disk does not take it, that is said once until it does again."""
        try:
            self.kept.write([part.kept() for part in self.parts()])
        except OSError as error:
            if not self.unkept:
                sentence = f"What is typed here cannot be kept against a power cut: {error.strerror}."
                self.notify(sentence, severity="error", markup=False)  # apart from the sentence beside the fields
            self.unkept = True
        else:
            self.unkept = False

    def step_on(self, widget: Widget) -> None:
        """Keep what was typed up to this Enter, then step on."""
        self.keep()
        super().step_on(widget)

    @on(Input.Changed)
    @on(Turned)
    def forget_the_question(self) -> None:
        """Typing on takes back the question whether to leave."""
        self.asked_to_leave = False

    def action_leave(self) -> None:
        """Leave without doing anything; with something typed it asks once."""
        if self.touched and not self.asked_to_leave:
            self.asked_to_leave = True
            self.say("Leave? What is typed here is let go. Esc again leaves.", trouble=True)
            return
        self.kept.forget()
        self.dismiss(None)
