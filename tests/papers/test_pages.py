"""Papers as pages: valid HTML, people's words escaped, no phone, address or price on a tag, the paper's own size."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING
from xml.etree.ElementTree import Element

import html5lib
import pytest
from html5lib.constants import namespaces

from queueboard.clean import cell_text
from queueboard.papers.pages.codes import code_of
from queueboard.papers.pages.day import day_page
from queueboard.papers.pages.slips import pad_page, stub_page, tags_page
from queueboard.papers.proof_card import card_html, slip_html, slip_text
from queueboard.papers.slips import handle_tags
from queueboard.phrases.day import knife_by_id, runs_today
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.proof import card_of
from queueboard.words import PaperSize
from tests.papers.boxes import ADDRESS, HOSTILE, PHONE, busy_shop, hostile_box, thirteen
from tests.pictures import HOSTILE_NAMES, at, box_picture, customer, knife, picture
from tests.shop.place import NOW, box

if TYPE_CHECKING:
    import numpy as np

HTML = f"{{{namespaces['html']}}}"


def parsed(page: str) -> Element:
    """The page as a parser of the WHATWG HTML standard reads it; its strict mode refuses what is not valid syntax."""
    read: Element = html5lib.HTMLParser(strict=True).parse(page)
    return read


def text_of(page: str) -> str:
    """What a person reads on it."""
    body = parsed(page).find(f"{HTML}body")
    assert body is not None
    return " ".join(" ".join(body.itertext()).split())


def pages_of(shop: Shop, number: int) -> Iterator[tuple[str, str]]:
    """Every paper of a box, on every size of paper that it may have."""
    seen, here, card = look(shop, NOW), box(shop, number), card_of(shop, number)
    assert card is not None
    for size in PaperSize:
        yield "tags", tags_page(here, seen, size)
        yield "stub", stub_page(here, seen, size)
        yield "card", card_html(card, size)
        yield "slip", slip_html(card, size)
    for size in (PaperSize.A4, PaperSize.LETTER):
        yield "day", day_page(seen, size)


@pytest.fixture
def hostile(shop: Shop) -> tuple[str, ...]:
    """All pages of a box whose people and knives are called like a script."""
    return tuple(page for _, page in pages_of(shop, hostile_box(shop)))


def test_every_page_is_valid_and_holds_nothing_that_people_wrote_as_html(hostile: tuple[str, ...]) -> None:
    """A strict parser of the HTML standard takes each page, and finds in it only what the templates wrote."""
    known = {"html", "head", "meta", "title", "style", "body", "div", "h1", "h2", "p", "section", "table", "tbody"} | {
        *("tr", "td", "th", "ul", "li", "span", "svg", "path")
    }
    for page in hostile:
        tags = {str(one.tag).rpartition("}")[2] for one in parsed(page).iter()}
        assert tags <= known
        assert "<script" not in page
        assert "{{ 7*7 }}" in page or "alert" not in page


def test_a_full_box_is_valid_on_every_paper(shop: Shop) -> None:
    """Thirteen knives with readings, a wish and a declined one: valid, each with its title."""
    for name, page in pages_of(shop, thirteen(shop)):
        title = parsed(page).find(f"{HTML}head/{HTML}title")
        assert title is not None
        assert title.text, name


@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_a_name_is_read_as_it_is_written(name: str) -> None:
    """Whatever people are called, the day sheet shows it literally, as much of it as fits."""
    seen = picture(box_picture(customer_=customer(name), ship_by=at(16)))

    assert cell_text(name)[:30] in text_of(day_page(seen, PaperSize.A4))


def test_no_page_fetches_anything(hostile: tuple[str, ...]) -> None:
    """Everything a page needs is in it: no address of another file or machine, nothing that runs."""
    for page in hostile:
        for one in parsed(page).iter():
            assert not {"src", "href", "onclick", "onload"} & set(one.attrib)
        assert "url(" not in page
        assert "@import" not in page


def test_a_tag_carries_no_phone_no_address_no_price(shop: Shop) -> None:
    """On handle tags stand number, first name, kind, wish and weekday; as text and as a page, on every paper."""
    number = thirteen(shop)
    seen, here = look(shop, NOW), box(shop, number)
    papers = [handle_tags(here, seen), *(text_of(tags_page(here, seen, size)) for size in PaperSize)]

    for paper in papers:
        assert "100-3" in paper
        assert "Maren" in paper
        assert "WISH: KEEP THE PATINA" in paper
        assert "due MONDAY, 9 Nov" in paper
        for private in (PHONE, PHONE[-4:], ADDRESS, "Quay", "Osterby", "Tallis", "9.00", "133.00", "USD"):
            assert private not in paper


@pytest.mark.parametrize("size", PaperSize)
def test_a_printed_pad_carries_its_numbers_and_nothing_else(size: PaperSize) -> None:
    """Tags for a stall are printed before anybody is known: each number once, as text and as its code."""
    assert text_of(pad_page(range(500, 503), size)) == "500 501 502"


def test_the_code_holds_the_tag_and_nothing_else() -> None:
    """What a decoder of ISO/IEC 18004 reads from the code on a tag is the tag; zxing-cpp has no part in making it."""
    import zxingcpp

    for tag in ("419-7", "1-1", "999999-999"):
        (path,) = (one for one in parsed(f"<!doctype html><title>x</title>{code_of(tag)}").iter() if one.get("d"))
        (found,) = zxingcpp.read_barcodes(drawn(path.get("d") or ""))
        assert (found.text, found.format) == (tag, zxingcpp.BarcodeFormat.QRCode)


def drawn(path: str, scale: int = 4) -> "np.ndarray[tuple[int, ...], np.dtype[np.uint8]]":
    """The path of the code as dark and light: M and m move the pen, h draws so many modules to the right."""
    import numpy as np  # where it is loaded, hypothesis keeps its dice too, before and behind each example

    dark = list[tuple[int, int, int]]()
    x, y = 0.0, 0.0
    for sign, numbers in re.findall(r"([Mmh])([^Mmh]*)", path):
        first, *rest = (float(number) for number in re.findall(r"-?[0-9.]+", numbers))
        if sign == "h":
            dark.append((int(x), int(y), int(first)))
        x = first if sign == "M" else x + first
        y = (0 if sign == "M" else y) + (rest[0] if rest else 0)
    size = max(column + length for column, _, length in dark) + 4
    image = np.full((size, size), 255, dtype=np.uint8)
    for column, row, length in dark:
        image[row, column : column + length] = 0
    return np.kron(image, np.ones((scale, scale), dtype=np.uint8))


@pytest.mark.parametrize(
    ("size", "css"), [(PaperSize.A4, "A4"), (PaperSize.LETTER, "letter"), (PaperSize.LABEL, "100mm 150mm")]
)
def test_a_page_says_what_it_is_printed_on(size: PaperSize, css: str) -> None:
    """The size is that of CSS Paged Media Level 3, so that the browser prints at it unasked."""
    assert f"@page {{ size: {css}; " in tags_page(box_picture(), picture(), size)


def test_the_slip_says_what_it_must(shop: Shop) -> None:
    """Each knife with before and after, how to open, wash, tell us again, what was declined and why, what stays."""
    number = thirteen(shop)
    card = card_of(shop, number)
    assert card is not None
    page = text_of(slip_html(card))

    for said in (
        *("In this box: 12 knives (twelve), knife roll, towel", "CAUTION: FRESHLY SHARPENED", "Wash before use."),
        *("Not as sharp as you wished", "100-9 slicer 7.9 in, handle 9: cracked. No charge.", "1180 gf > 165 gf"),
        *("100-13 chef 7.9 in, handle 13: not ready yet", "You wished: keep the patina", "Keep it in a block"),
    ):
        assert said in page
    text = " ".join(slip_text(card).split())
    for said in ("IN THIS BOX: 12 knives (twelve), knife roll, towel", "cracked. No charge.", "1180 gf 165 gf"):
        assert said in text


def test_the_stub_has_the_shop_s_own_phone() -> None:
    """Count in figures and words, terms, and whom to ask; a hostile name of the shop is a name."""
    seen = picture(box_picture())
    settings = replace(seen.settings, name=HOSTILE[:60], papers=replace(seen.settings.papers, phone="0555 000 111"))
    page = stub_page(seen.boxes[0], replace(seen, settings=settings), PaperSize.LABEL)

    assert "3, three knives" in text_of(page)
    assert "Ask us: 0555 000 111" in text_of(page)
    assert HOSTILE[:30] in text_of(page)


def test_the_day_sheet_keeps_the_order_of_the_screen_and_says_what_has_no_room(shop: Shop) -> None:
    """The tags stand in the order of the plan; on a day too full for two pages the rest is counted."""
    busy_shop(shop)
    seen = look(shop, NOW)
    knives = knife_by_id(seen)
    order = [knives[knife_id].tag for run in runs_today(seen) for knife_id in run.knife_ids]
    page = parsed(day_page(seen, PaperSize.LETTER))
    printed = [one.text or "" for one in page.iter(f"{HTML}td") if one.get("class") == "tagged"]

    assert printed == order[: len(printed)]
    assert len(printed) > 20
    assert sum("more, on the screen" in (one.text or "") for one in page.iter()) >= 1


def test_a_wish_is_never_cut_off_behind_a_long_mark() -> None:
    """The mark gives way on the day sheet; the wish stands."""
    from queueboard.papers.pages.day import _knife_line

    here = knife(mark="M" * 300, wish="not the tip")
    assert _knife_line(here, picture(box_picture(knives_=(here,)))).says.endswith("WISH: NOT THE TIP")
