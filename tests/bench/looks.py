"""Every screen drawn, to be looked at: python -m tests.bench.looks FOLDER [CHROMIUM].

Writes each screen of the tests' small shop as SVG, at both sizes in all three themes, and sheets of six as PNG through
a real Chromium without a window. No figure says whether a screen is pleasant: look at the sheets. A bare machine has
no Chromium, so this is no test; `apt-get install chromium` has one.
"""

import asyncio
import os
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.board.desk import Desk
from queueboard.board.themes import THEMES
from queueboard.shop.opening import close_shop
from tests.bench.papers import QUIET
from tests.board.all_screens import SCREENS, Make
from tests.board.host import LARGE, SMALL, Home, Host
from tests.house.picture import at_home
from tests.shop.place import NOW, counter, parcel, small_shop

PER_SHEET = 6
SHEET = (
    "<style>body{margin:8px;background:#888;display:grid;grid-template-columns:1fr 1fr;gap:8px}img{width:100%}</style>"
)


async def drawn(make: Make, size: tuple[int, int], folder: Path) -> dict[str, str]:
    """One screen as SVG in each theme, by the theme's name; the shop's file is made in the folder."""
    shop = small_shop(folder)
    parcel(shop)
    counter(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: Home(desk))
    pictures = {}
    async with app.run_test(size=size) as pilot:
        app.push_screen(make(desk))
        await pilot.pause()
        for theme in THEMES:
            app.theme = theme.name
            await pilot.pause()
            pictures[theme.name] = at_home(app.export_screenshot(title=type(app.screen).__name__))
    close_shop(shop)
    return pictures


def sheet(chromium: str, pictures: list[Path], to: Path) -> None:
    """Six screens side by side in one PNG."""
    page = to.with_suffix(".html")
    page.write_text(SHEET + "".join(f'<img src="{picture.as_uri()}">' for picture in pictures), encoding="utf-8")
    with TemporaryDirectory() as profile:
        command = [chromium, *QUIET, f"--user-data-dir={profile}", "--window-size=1640,1580", f"--screenshot={to}"]
        subprocess.run([*command, page.as_uri()], check=True, capture_output=True, timeout=60)


def main() -> None:
    """Draw them all, then the sheets."""
    folder, chromium = Path(sys.argv[1]).absolute(), sys.argv[2] if len(sys.argv) > 2 else "chromium"
    folder.mkdir(parents=True, exist_ok=True)
    os.environ["COLORTERM"] = "truecolor"  # else the themes are those of a terminal of 16 colours
    for width, size in (("80", SMALL), ("120", LARGE)):
        for kind, make in SCREENS.items():
            with TemporaryDirectory() as file:
                for name, svg in asyncio.run(drawn(make, size, Path(file))).items():
                    (folder / f"{name}-{width}-{kind.__name__}.svg").write_text(svg, encoding="utf-8")
        for theme in THEMES:
            here = sorted(folder.glob(f"{theme.name}-{width}-*.svg"))
            for first in range(0, len(here), PER_SHEET):
                to = folder / f"sheet-{theme.name}-{width}-{first // PER_SHEET:02}.png"
                sheet(chromium, here[first : first + PER_SHEET], to)
                print(to)


if __name__ == "__main__":
    main()
