"""What all screens share: the desk, a place for sentences, and the picture handed down."""

from collections.abc import Callable
from typing import ClassVar, Concatenate, Generic, ParamSpec, TypeVar

from textual import on
from textual.app import App
from textual.await_complete import AwaitComplete
from textual.binding import Binding, BindingType
from textual.events import Key, Resize, ScreenResume
from textual.screen import ModalScreen, Screen

from queueboard.board.desk import Desk
from queueboard.board.widgets.notice import Notice
from queueboard.errors import QueueboardError, TypedError
from queueboard.phrases.bench import ended_words
from queueboard.shop.opening import Shop
from queueboard.shop.picture import Picture
from queueboard.values.actor import Actor
from queueboard.values.measured import BenchRun

P = ParamSpec("P")
R = TypeVar("R")
Answer = TypeVar("Answer")

NOTICE_SECONDS = 6
"""How long a notice stands, if no other takes its place."""


class ShopScreen(Screen[Answer], Generic[Answer]):
    """A screen that shows the picture and hands over what the person wants."""

    HELP: ClassVar[str] = ""
    """What can be done here, in sentences: the first thing that the help of this screen says, before its keys."""
    leads_to_tags: ClassVar[bool] = False
    """True where a digit leaves the screen and begins a tag on the board."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        self._insisted_on: list[object] = []

    def show(self, picture: Picture) -> None:
        """Show a new picture; called after every action and when another window has written."""

    def dismiss(self, result: Answer | None = None) -> AwaitComplete:
        """Leave with an answer. Once: Textual would take whatever screen lies on top, this one or another."""
        return super().dismiss(result) if self.is_active else AwaitComplete()

    @property
    def begins_numbers(self) -> bool:
        """True while a digit would begin the number of a box; there 0, with which none begins, is the bell."""
        return self.leads_to_tags

    def take_first(self, key: Key) -> bool:
        """Take a key before it goes to what has the focus; True when it is taken and goes no further."""
        if not self.leads_to_tags or not key.character or key.character not in "0123456789":
            return False
        self.dismiss(None)
        below = self.app.screen
        return isinstance(below, ShopScreen) and below.take_first(key)

    def on_screen_resume(self, event: ScreenResume) -> None:
        """Stand as it was put together: each part was styled as it came, and is again wherever something changes it."""
        event.refresh_styles = False

    @on(Resize)
    def stand_as_it_is(self, event: Resize) -> None:
        """Lay out nothing anew for a size that all stand at, as Textual does, here and below, for each that opens."""
        if not self.VERTICAL_BREAKPOINTS and all(screen.outer_size == event.size for screen in self.app.screen_stack):
            event.prevent_default()

    def attempt(
        self, operation: Callable[Concatenate[Shop, Actor, P], R], *args: P.args, **kwargs: P.kwargs
    ) -> tuple[R] | None:
        """Run one operation; its answer in a one-tuple, or None after saying the error's sentence.

        Either way the newest picture is shown, so that a second try meets what is really there.
        """
        before = self.desk.seen
        try:
            answer = self.desk.do(operation, *args, **kwargs)
        except QueueboardError as error:
            self.refresh_picture()
            self.refused(error)
            return None
        self.refresh_picture()
        self._keep_besides(before, answer)
        return (answer,)

    def insist(self, about: object, question: str) -> None:
        """Ask back before something unusual is stored: TypedError once; the same once more goes through."""
        if about not in self._insisted_on:
            self._insisted_on.append(about)
            raise TypedError(question)

    def _keep_besides(self, before: Picture, answer: object) -> None:
        """Say which runs are over with that; kept for the sentence that may come behind and take this one's place."""
        told = answer.id if isinstance(answer, BenchRun) else None
        self.desk.besides = ended_words(before, self.desk.seen, told)
        if self.desk.besides:
            self.put(self.desk.besides, trouble=False)

    def work(self, at: str, then: Callable[[], None]) -> None:
        """Say what is being worked out, let that be drawn, then do it; in a file of years it may take seconds.

        The keys that come meanwhile are for this screen; once it is left nothing is worked out any more.
        """
        self.say(f"Working out {at} …")

        def begin() -> None:
            if self in self.app.screen_stack:
                self.say("")
                then()

        self.call_after_refresh(begin)

    def refused(self, error: QueueboardError) -> None:
        """Say why nothing was stored."""
        self.say(str(error), trouble=True)

    def refresh_picture(self) -> None:
        """Take a new picture and show it on every screen; what stands in the way is said."""
        try:
            self.take_picture()
        except QueueboardError as error:
            self.say(str(error), trouble=True)
            return
        show_everywhere(self.app)

    def take_picture(self) -> None:
        """Let the desk look."""
        self.desk.look()

    def say(self, sentence: str, *, trouble: bool = False) -> None:
        """Say one sentence to the person in place of the last one, and what the last action did besides."""
        besides, self.desk.besides = self.desk.besides, ""
        self.put("   ".join(filter(None, (sentence, besides))), trouble=trouble)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Put a sentence where it is read on this screen; people's text in it is shown literally."""
        self.give_notice(sentence, trouble=trouble)

    def give_notice(self, sentence: str, *, trouble: bool, seconds: float = NOTICE_SECONDS) -> None:
        """Show it at the foot for a while, apart from what put says; empty only takes the last one away."""
        for last in self.query(Notice):
            last.remove()
        if sentence:
            self.mount(Notice(sentence, trouble=trouble, seconds=seconds))

    def say_if_any(self, sentence: str | None) -> None:
        """Say what a screen over this one was left with."""
        if sentence is not None:
            self.say(sentence)


class ShopModal(ShopScreen[Answer], ModalScreen[Answer]):
    """A ShopScreen that lies over another: one question with a typed answer."""

    # The app's own keys do not reach a screen that lies over another.
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+c", "app.help_quit", show=False, system=True),
        Binding("question_mark", "app.keys", show=False, system=True),
    ]


def show_everywhere(app: App[int]) -> None:
    """Hand the desk's picture to every screen that stands, the covered ones too; one that opens takes it by itself."""
    for screen in app.screen_stack:
        if isinstance(screen, ShopScreen) and screen.is_mounted:
            screen.show(screen.desk.seen)
