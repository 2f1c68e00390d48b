"""Every paper printed by a real browser: python -m tests.bench.papers FOLDER [CHROMIUM].

Writes each paper as HTML, prints it without a window to PDF at its own size, and says how many pages that came to and
how large they are. Look at the PDFs: no figure says whether a paper can be read. A bare machine has no Chromium, so
this is no test; `apt-get install chromium` has one.
"""

import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.papers.pages.day import day_page
from queueboard.papers.pages.slips import pad_page, stub_page, tags_page
from queueboard.papers.proof_card import card_html, slip_html
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.proof import card_of
from queueboard.shop.receiving import add_knife
from queueboard.words import PaperSize
from tests.papers.boxes import HOSTILE, busy_shop, hostile_box, thirteen
from tests.shop.place import NOW, box, by, chef, small_shop

QUIET = (
    *("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--no-pdf-header-footer"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync"),
)
POINTS = {PaperSize.A4: (595, 842), PaperSize.LETTER: (612, 792), PaperSize.LABEL: (283, 425)}
"""Width and height in whole points: A4 by ISO 216, letter is 8.5 x 11 in, the label 100 x 150 mm."""


def papers() -> Iterator[tuple[str, PaperSize, str]]:
    """Name, size and page of each paper of a box of thirteen, of a box with a hostile name, and of three days."""
    with TemporaryDirectory() as folder:
        shop = small_shop(Path(folder))
        for name, number in (("thirteen", thirteen(shop)), ("hostile", hostile_box(shop))):
            yield from _of_box(shop, name, number)
        yield from _of_day(shop, "calm")
        busy_shop(shop)
        yield from _of_day(shop, "busy")
        hostile = box(shop, hostile_box(shop))
        for place in range(60):
            add_knife(shop, by(minutes=1 + place), box(shop, hostile.box.number).box, chef(mark=HOSTILE[:60]))
        yield from _of_day(shop, "overfull")
        for size in PaperSize:
            yield "pad", size, pad_page(range(500, 531), size)
        close_shop(shop)


def _of_box(shop: Shop, name: str, number: int) -> Iterator[tuple[str, PaperSize, str]]:
    picture, here, card = look(shop, NOW), box(shop, number), card_of(shop, number)
    assert card is not None
    for size in PaperSize:
        yield f"{name}-tags", size, tags_page(here, picture, size)
        yield f"{name}-stub", size, stub_page(here, picture, size)
        yield f"{name}-card", size, card_html(card, size)
        yield f"{name}-slip", size, slip_html(card, size)


def _of_day(shop: Shop, name: str) -> Iterator[tuple[str, PaperSize, str]]:
    picture = look(shop, NOW)
    for size in (PaperSize.A4, PaperSize.LETTER):
        yield f"{name}-day", size, day_page(picture, size)


def printed(chromium: str, page: Path) -> tuple[int, tuple[int, int]]:
    """The pages of the PDF that the browser makes of a page, and their width and height in points."""
    pdf = page.with_suffix(".pdf")
    with TemporaryDirectory() as profile:
        command = [chromium, *QUIET, f"--user-data-dir={profile}", f"--print-to-pdf={pdf}", page.as_uri()]
        subprocess.run(command, check=True, capture_output=True, timeout=60)
    content = pdf.read_bytes()
    width, height = re.findall(rb"/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]", content)[0]
    return len(re.findall(rb"/Type /Page\b(?!s)", content)), (int(float(width)), int(float(height)))


def main() -> None:
    """Print them all, and what each came to."""
    folder, chromium = Path(sys.argv[1]).absolute(), sys.argv[2] if len(sys.argv) > 2 else "chromium"
    folder.mkdir(parents=True, exist_ok=True)
    for name, size, html in papers():
        page = folder / f"{name}-{size.value}.html"
        page.write_text(html, encoding="utf-8")
        pages, points = printed(chromium, page)
        right = (
            ""
            if all(abs(a - b) <= 1 for a, b in zip(points, POINTS[size], strict=True))
            else f"  WRONG SIZE, not {POINTS[size]}"
        )
        print(f"{name:<16} {size.value:<7} {pages:>2} pages, {points[0]} x {points[1]} pt{right}")


if __name__ == "__main__":
    main()
