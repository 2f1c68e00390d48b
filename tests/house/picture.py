"""README's pictures, drawn from the invented shop on one fixed morning.

Run `python -m tests.house.picture` to draw them anew.
"""

import asyncio
import re
import tempfile
from datetime import UTC, datetime
from html import unescape
from pathlib import Path

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.phrases.boxes import WORKING_OUT
from queueboard.shop.demo import make_demo_shop
from queueboard.shop.opening import close_shop
from tests.board.dump import dump
from tests.board.host import until
from tests.house.tree import ROOT

FOLDER = ROOT / ".pictures"
MORNING = datetime(2026, 6, 10, 12, 30, tzinfo=UTC)
"""A Wednesday, half past eight where the invented shop stands then."""

SIZE = (120, 36)
"""Columns and lines of the terminal, for the board."""

SMALLER = (100, 30)
"""The same, for all the others."""

KEYS: dict[str, tuple[str, ...]] = {
    "board": (),
    "day": ("d",),
    "tray": (*"419", "+", *"13.16"),
    "receive": ("r", *"Finch", *(["enter"] * 3), "4", "enter", "enter", *"4~chef~8~dull"),
    "late": ("j",),
    "phone": ("f", *"Brant"),
    "close-out": (*"408", "/"),
    "chart": ("k", "5"),
    "wall": ("V",),
}
"""The name of each picture, and what is pressed on the board until it shows. `~` is the space bar."""


async def drawn(folder: Path) -> dict[str, str]:
    """Each picture as SVG by its name; the shop's file is made in the folder."""
    shop = make_demo_shop(folder / "demo.qb", MORNING)
    try:
        return {name: await one(Desk(shop, "MB", lambda: MORNING), name) for name in KEYS}
    finally:
        close_shop(shop)


async def one(desk: Desk, name: str) -> str:
    """What an app of its own shows after the keys of this picture."""
    app = QueueboardApp(desk)
    async with app.run_test(size=SIZE if name == "board" else SMALLER) as pilot:
        await pilot.pause()
        await until(pilot, lambda: WORKING_OUT not in dump(app))
        await pilot.press(*("space" if key == "~" else key for key in KEYS[name]))
        await until(pilot, lambda: WORKING_OUT not in dump(app))
        return at_home(app.export_screenshot(title="queueboard demo"))


def at_home(svg: str) -> str:
    """The picture without fonts fetched from elsewhere and without the buttons of somebody's window."""
    svg = re.sub(r"(?s)\s*@font-face \{.*?\}", "", svg)
    svg = re.sub(r"\s*<circle[^>]*/>", "", svg)
    return svg.replace("Fira Code, monospace", "monospace").replace("font-family: arial", "font-family: sans-serif")


def words(svg: str) -> list[str]:
    """What a person reads in the picture, line by line; the drawing library may change all the rest."""
    lines: dict[float, list[tuple[float, str]]] = {}
    for attributes, text in re.findall(r"<text([^>]*)>([^<]*)</text>", svg):
        if place := re.search(r'x="([\d.]+)" y="([\d.]+)"', attributes):
            lines.setdefault(float(place[2]), []).append(
                (float(place[1]), unescape(text).replace("\N{NO-BREAK SPACE}", " "))
            )
    rows = ("".join(text for _, text in sorted(parts)) for _, parts in sorted(lines.items()))
    return [re.sub(r" +", " ", row).strip() for row in rows]


def main() -> None:
    """Draw the pictures into .pictures/."""
    with tempfile.TemporaryDirectory() as folder:
        FOLDER.mkdir(exist_ok=True)
        for name, svg in asyncio.run(drawn(Path(folder))).items():
            (FOLDER / f"{name}.svg").write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    main()
