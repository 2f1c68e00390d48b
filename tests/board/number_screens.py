"""The screens of the shop's own numbers and their questions."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs.numbers import NumberDialog, TakeInDialog, TakeOutDialog
from queueboard.board.screens.numbers import NumbersScreen, SectionScreen, ways_of
from queueboard.phrases.number_sections import section_with
from queueboard.phrases.own_numbers import Entry
from queueboard.shop.settings_now import settings_text
from tests.board.host import AnyScreen


def entry(desk: Desk, section: str, words: str) -> Entry:
    """The line of a section with this name."""
    groups = section_with(section).groups(settings_text(desk.shop), ways_of(desk.picture))
    return next(one for group in groups for one in group.entries if one.words == words)


def _about_chef(kind: type[NumberDialog] | type[TakeOutDialog]) -> Callable[[Desk], AnyScreen]:
    return lambda desk: kind(
        desk, section_with("kinds"), entry(desk, "kinds", "chef"), settings_text(desk.shop)
    )  # fmt: skip


NUMBER_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    NumbersScreen: NumbersScreen,
    SectionScreen: lambda desk: SectionScreen(desk, section_with("prices")),
    NumberDialog: _about_chef(NumberDialog),
    TakeOutDialog: _about_chef(TakeOutDialog),
    TakeInDialog: TakeInDialog,
}
