"""Decline a knife, or take a declined one after all."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Tick
from queueboard.board.forms.form import Dialog
from queueboard.priced_words import Finding
from queueboard.shop.noting import accept_knife, decline_knife
from queueboard.values.knife import Knife
from queueboard.words import DeclineReason


class DeclineDialog(Dialog):
    """Why it goes back unsharpened; or, for a declined one, whether it is taken after all."""

    def __init__(self, desk: Desk, knife: Knife) -> None:
        super().__init__(desk)
        self.knife = knife
        self.why = Choice([(reason.value, reason) for reason in DeclineReason], across=False)
        self.note = Field(hint="what was seen, for the customer (may stay empty)")
        self.told_to = Field(hint="who was told, or empty")
        self.photo = Tick("a photo was taken", value=Finding.PHOTO in knife.findings)

    def heading(self) -> str:
        if self.knife.declined is not None:
            return f"{self.knife.tag} was declined: {self.knife.declined.value}. Take it after all, as received?"
        return f"Decline {self.knife.tag} {self.knife.kind} {self.knife.mark}".rstrip()

    def fields(self) -> ComposeResult:
        if self.knife.declined is not None:
            self.hint = "Enter or + takes it after all · - or Esc leaves it declined"
            yield Choice([("take it after all", True)])
            return
        yield Static(Content("It goes back unsharpened and free, and is counted at close-out."))
        yield self.why
        yield Row(("note", self.note))
        yield Row(("told to", self.told_to), ("", self.photo))

    def go(self) -> None:
        if self.knife.declined is not None:
            self.done(self.attempt(accept_knife, self.knife))
        else:
            self.done(self._decline())

    def _decline(self) -> tuple[None] | None:
        return self.attempt(
            decline_knife,
            self.knife,
            self.why.value,
            self.note.value,
            told_to=self.told_to.value,
            photo=self.photo.value,
        )

    def anew(self) -> Dialog:
        return DeclineDialog(self.desk, self.knife_now(self.knife))
