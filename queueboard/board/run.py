"""Opening the board on a terminal, and leaving it well: after a quit, a signal, or a failure of the program."""

import os
import signal
from collections.abc import Callable
from datetime import datetime

from queueboard.board.app import QueueboardApp
from queueboard.board.appearance import choice_file, chosen
from queueboard.board.crash import write_report
from queueboard.board.desk import Desk
from queueboard.papers.output import print_trouble
from queueboard.shop.opening import Shop

FAILED = 1
"""Exit code when the program failed."""


def run_board(
    shop: Shop, initials: str, clock: Callable[[], datetime], *, no_mouse: bool = False, demo: str = ""
) -> int:
    """Show the board until the person leaves; the exit code: 0 after a quit, 1 after a failure, 128 + n after signal n.

    Empty initials are asked for on the first screen. With NO_COLOR in the environment, and not empty, nothing is
    coloured. QUEUEBOARD_THEME names the theme, TypedError for a name that none has; else the kept one is worn. demo:
    what becomes of an invented shop, kept or thrown away; empty for a real one.
    """
    desk = Desk(shop, initials, clock, demo=demo)
    choice = choice_file()
    theme = chosen(os.environ.get("QUEUEBOARD_THEME", ""), choice)
    plain = bool(os.environ.get("NO_COLOR"))
    if not plain:
        os.environ.pop("NO_COLOR", None)  # an empty one asks for nothing, and Textual would take it for set
    app = QueueboardApp(desk, plain=plain, theme=theme, choice=choice)
    app.run(mouse=not no_mouse)
    if app.failure is not None:
        path = write_report(app.failure, shop.path.parent, f"{clock():%Y-%m-%d %H:%M}")
        where = f" A report without anybody's data is in {path}." if path is not None else ""
        print_trouble(
            f"queueboard failed and has closed; everything up to the last “Saved” is in the shop file.{where}"
        )
        return FAILED
    if app.stopped_by is not None:
        name = signal.Signals(app.stopped_by).name
        print_trouble(f"queueboard was told to stop ({name}); everything up to the last “Saved” is in the shop file.")
        return 128 + app.stopped_by
    return app.return_code or 0
