"""Every screen as text, at both sizes, in a shop that is empty, has one box, many, or names made to break it.

One app a state walks through all of them: a screen alone costs three times as much. On the way each is asked for its
help, and whether anything on it is told by colour alone.
"""

from collections.abc import Iterator
from difflib import unified_diff
from pathlib import Path

import pytest
from textual.app import App
from textual.binding import Binding
from textual.pilot import Pilot

from queueboard.board.forms.form import Dialog
from queueboard.board.key_names import key_name
from queueboard.board.screens.help import help_lines
from tests.board.all_screens import SCREENS
from tests.board.dump import dump
from tests.board.every_screen import WALKED, empty_screens, over_home, walk
from tests.board.host import LARGE, SMALL, laid_out
from tests.board.test_no_colour import told_by_colour_alone
from tests.board.test_opening import other_when_made_anew
from tests.kept import UPDATE, kept

ABOUT_ONE = {
    *("BoxScreen", "BoxHistoryScreen", "CloseOutScreen", "EdgeScreen", "GoneScreen", "MessageScreen", "PapersDialog"),
    *("ReceivedScreen", "RunDialog", "SummaryScreen", "SwapSheetScreen", "TrayDialog"),
}
"""Never opened in an empty shop: about one box, one knife or one kitchen that has to be there."""


BEFORE_A_SHOP = {"FirstScreen"}
"""Makes the shop, and says in which folder, which is another one in each run."""


def test_every_screen_is_walked_through_or_has_nothing_to_show() -> None:
    """In an empty shop too, but for those about one thing, as questions are that are left out there."""
    never_empty = set(SCREENS) - set(empty_screens())

    assert {kind.__name__ for kind in never_empty if not issubclass(kind, Dialog)} == ABOUT_ONE | BEFORE_A_SHOP


@pytest.mark.parametrize("state", WALKED)
async def test_every_screen_is_as_it_is_kept(state: str, tmp_path: Path) -> None:
    """At 80x24 and at 120x40 each screen reads as its text in tests/screens does, without colours."""
    texts: dict[str, str] = {}
    app = over_home(tmp_path, plain=True)
    async with app.run_test(size=SMALL) as pilot:
        async for screen in walk(state, tmp_path, pilot):
            name = type(screen).__name__
            texts[f"{state}-80/{name}"] = shown = await settled(pilot, SMALL)
            assert not other_when_made_anew(app), name
            assert not {"\x1b", "\u202e"} & set(shown), name
            await pilot.resize_terminal(*LARGE)
            texts[f"{state}-120/{name}"] = await settled(pilot, LARGE)
            assert app.failure is None, name
            assert not [binding.id for binding in unnamed_keys(app)], name
            assert not told_by_colour_alone(app), name
            await pilot.resize_terminal(*SMALL)

    compared = {name: now for name, now in texts.items() if not name.endswith(tuple(BEFORE_A_SHOP))}
    changed = [name for name, now in compared.items() if now != kept(name, now)]
    assert not changed, f"{UPDATE}=1 keeps these as they are now: {changed}\n{difference(changed[0], texts)}"


async def settled(pilot: Pilot[int], size: tuple[int, int]) -> str:
    """The screen as text, once it has this size and a further look shows nothing new."""
    await laid_out(pilot, size)
    before = ""
    for _ in range(100):
        await pilot.pause()
        if (now := dump(pilot.app)) == before:
            return now
        before = now
    raise AssertionError("the screen never came to rest")


def difference(name: str, texts: dict[str, str]) -> str:
    """What has changed on the first of them."""
    return "\n".join(unified_diff(kept(name, "").splitlines(), texts[name].splitlines(), "kept", "now", lineterm=""))


def unnamed_keys(app: App[int]) -> Iterator[Binding]:
    """The keys of ours that work now and that the help of the screen does not name with what they do."""
    paragraphs = "\n".join(line.plain for line in help_lines(app.screen, 500, with_pad=False))
    lines = [" ".join(line.split()).casefold() for line in paragraphs.splitlines()]
    for active in app.screen.active_bindings.values():
        binding = active.binding
        key, says = key_name(binding.key).casefold(), (binding.tooltip or f"{binding.description}.").casefold()
        named = any(line.endswith(f" {says}") and key in line.removesuffix(says).split() for line in lines)
        if binding.id is not None and not named:
            yield binding
