"""README's picture of the board, drawn from the invented shop on one fixed morning.

Run `python -m tests.house.picture` to draw it anew.
"""

import asyncio
import re
import tempfile
from datetime import UTC, datetime
from html import unescape
from pathlib import Path

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.shop.demo import make_demo_shop
from queueboard.shop.opening import close_shop
from tests.house.tree import ROOT

PICTURE = ROOT / ".pictures" / "board.svg"
MORNING = datetime(2026, 6, 10, 12, 30, tzinfo=UTC)
"""A Wednesday, half past eight where the invented shop stands then."""

SIZE = (120, 36)
"""Columns and lines of the terminal."""


async def drawn(folder: Path) -> str:
    """The board as SVG; the shop's file is made in the folder."""
    shop = make_demo_shop(folder / "demo.qb", MORNING)
    try:
        app = QueueboardApp(Desk(shop, "MB", lambda: MORNING))
        async with app.run_test(size=SIZE) as pilot:
            await pilot.pause()
            return at_home(app.export_screenshot(title="queueboard demo"))
    finally:
        close_shop(shop)


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
    """Draw the picture into .pictures/board.svg."""
    with tempfile.TemporaryDirectory() as folder:
        PICTURE.parent.mkdir(exist_ok=True)
        PICTURE.write_text(asyncio.run(drawn(Path(folder))), encoding="utf-8")


if __name__ == "__main__":
    main()
