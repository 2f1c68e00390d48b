"""Opening the board on a terminal, and leaving it well: after a quit, a signal, or a failure of the program."""

import os
import signal
from collections.abc import Callable
from datetime import datetime
from typing import TypeVar

from queueboard.board.app import QueueboardApp
from queueboard.board.appearance import choice_file, chosen
from queueboard.board.crash import write_report
from queueboard.board.desk import Desk
from queueboard.papers.output import print_trouble
from queueboard.shop.opening import Shop

FAILED = 1
"""Exit code when the program failed."""

AnyApp = TypeVar("AnyApp", bound=QueueboardApp)


def run_board(
    shop: Shop,
    initials: str,
    clock: Callable[[], datetime],
    *,
    no_mouse: bool = False,
    demo: str = "",
    greeting: str = "",
) -> int:
    """Show the board until the person leaves; the exit code: 0 after a quit, 1 after a failure, 128 + n after signal n.

    Empty initials are asked for on the first screen. With NO_COLOR in the environment, and not empty, nothing is
    coloured. QUEUEBOARD_THEME names the theme, TypedError for a name that none has; else the kept one is worn. demo:
    what becomes of an invented shop, kept or thrown away; empty for a real one. greeting: said on the first board.
    """
    desk = Desk(shop, initials, clock, demo=demo)
    desk.greeting = greeting
    return _run(_dressed(QueueboardApp, desk), no_mouse=no_mouse)


def ask_for_numbers(
    shop: Shop, initials: str, clock: Callable[[], datetime], place: tuple[str, str], *, no_mouse: bool = False
) -> tuple[int, str]:
    """Ask a shop that is being made for its first numbers; the exit code, and the initials, empty when it was left.

    place: the time zone and the country of this machine, each empty where it is not known.
    """
    from queueboard.board.starting import MakingDesk, StartingApp

    desk = MakingDesk(shop, "", clock)
    app = _dressed(StartingApp, desk)
    app.initials, app.place = initials, place
    code = _run(app, no_mouse=no_mouse)
    return code, desk.initials if app.answered else ""


def _dressed(kind: type[AnyApp], desk: Desk) -> AnyApp:
    """The app in the theme that was asked for."""
    choice = choice_file()
    theme = chosen(os.environ.get("QUEUEBOARD_THEME", ""), choice)
    plain = bool(os.environ.get("NO_COLOR"))
    if not plain:
        os.environ.pop("NO_COLOR", None)  # an empty one asks for nothing, and Textual would take it for set
    return kind(desk, plain=plain, theme=theme, choice=choice)


def _run(app: QueueboardApp, *, no_mouse: bool) -> int:
    """Run it to its end, and say what ended it once the terminal is free again."""
    app.run(mouse=not no_mouse)
    if app.failure is not None:
        path = write_report(app.failure, app.desk.shop.path.parent, f"{app.desk.clock():%Y-%m-%d %H:%M}")
        where = f" A report without anybody's data is in {path}." if path is not None else ""
        print_trouble(f"queueboard failed and has closed; {app.what_is_kept}.{where}")
        return FAILED
    if app.stopped_by is not None:
        name = signal.Signals(app.stopped_by).name
        print_trouble(f"queueboard was told to stop ({name}); {app.what_is_kept}.")
        return 128 + app.stopped_by
    return app.return_code or 0
