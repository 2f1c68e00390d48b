"""A page in the person's browser, where there is one; never needed, since the page lies in a file as well."""

import os
import sys
from pathlib import Path


def open_page(path: Path) -> bool:
    """Open a page in a browser with a window of its own; False where there is none.

    Over ssh and without a screen nothing is tried, and a browser that would draw on this terminal is none.
    """
    import webbrowser

    if not _has_windows():
        return False
    try:
        browser = webbrowser.get()
    except webbrowser.Error:
        return False
    if type(browser) is webbrowser.GenericBrowser:
        return False
    return browser.open(path.absolute().as_uri())


def _has_windows() -> bool:
    """True where a window can be shown to the person who typed."""
    if any(os.environ.get(name) for name in ("SSH_CONNECTION", "SSH_TTY")):
        return False
    return sys.platform in ("darwin", "win32") or any(os.environ.get(n) for n in ("DISPLAY", "WAYLAND_DISPLAY"))
