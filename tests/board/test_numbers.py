"""The screen of the shop's own numbers, used as its owner would."""

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.dialogs.numbers import NumberDialog, TakeInDialog, TakeOutDialog
from queueboard.board.screens.numbers import HALF_TYPED, NumbersScreen, SectionScreen
from queueboard.phrases.number_sections import SECTIONS, section_with
from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_text
from queueboard.shop.undoing import steps, undo
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, until
from tests.board.test_hostile_everywhere import HOSTILE
from tests.board.typing import fill
from tests.shop.place import NOW, by

STARTER = seed_text("settings.toml")


def section(shop: Shop, name: str) -> Host:
    """One section alone."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: SectionScreen(desk, section_with(name)))


async def stand_on(app: Host, pilot: Pilot[int], line: str) -> None:
    """Put the cursor on a line of the section."""
    await until(pilot, lambda: isinstance(app.screen, SectionScreen))
    options = app.screen.query_one(OptionList)
    options.highlighted = options.get_option_index(line)
    await pilot.pause()


async def ask(app: Host, pilot: Pilot[int], line: str, key: str = "enter") -> None:
    """Open the question of a line."""
    await stand_on(app, pilot, line)
    await pilot.press(key)
    await until(pilot, lambda: not isinstance(app.screen, SectionScreen))


async def back(app: Host, pilot: Pilot[int]) -> str:
    """The section again, as it shows."""
    await until(pilot, lambda: isinstance(app.screen, SectionScreen))
    await pilot.pause()
    return dump(app)


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_the_list_of_sections_reads_at_both_sizes(
    size: tuple[int, int], two_boxes: Shop, request: pytest.FixtureRequest
) -> None:
    """Each section with when it was last checked: today, long ago, never."""
    text = STARTER.replace("# tax = 2026-11-02", "tax = 2026-11-02\nhours = 2025-09-01\nkinds = 2026-11-09")
    take_settings(two_boxes, by(), text)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: NumbersScreen(desk))

    async with app.run_test(size=size) as pilot:
        await pilot.press("1", "2")
        await pilot.pause()
        assert_screen(app, f"numbers-{size[0]}")


async def test_a_scanned_tag_is_no_section(two_boxes: Shop) -> None:
    """A dash between digits is let go of, and the digits stay with the sections."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: NumbersScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("1", "0", "minus", "2")
        await pilot.pause()
        assert isinstance(app.screen, NumbersScreen)
        section_here = app.screen.section_here()
        assert section_here is not None
        assert section_here == SECTIONS[1]


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
@pytest.mark.parametrize("name", [section.name for section in SECTIONS])
async def test_each_section_reads_at_both_sizes(name: str, size: tuple[int, int], shop: Shop) -> None:
    """Its numbers in the trade's words with their units, its caution where law or carriers have a say."""
    more = STARTER + '\n[[carriers]]\nname = "Gull Post"\nlast_checked = 2026-11-02\n[[closures]]\n'
    take_settings(shop, by(), f'{more}first = 2026-12-24\nlast = 2027-01-02\nreason = "winter break"\n')
    app = section(shop, name)

    async with app.run_test(size=size) as pilot:
        await until(pilot, lambda: isinstance(app.screen, SectionScreen))
        await pilot.pause()
        assert_screen(app, f"numbers-{name}-{size[0]}")


@pytest.mark.parametrize(
    ("name", "line", "typed", "before", "after"),
    [
        ("prices", "prices/rust", ("4,50",), "rust = 4.00", "rust = 4.50"),
        ("prices", "prices/rust", ("",), "rust = 4.00\n", ""),
        ("hours", "hours/sat", ("closed",), '["08:00-13:00"] ', "[] "),
        ("bench", "bench/mon", ("8:00-10:00",), 'mon = ["08:00-10:30", "12:30-14:30"]', 'mon = ["08:00-10:00"]'),
        ("lines", "gauge/lines/paring", ("180",), "paring = 200", "paring = 180"),
        ("shop", "shop/name", ("A [b] \\ “c”",), '"Fernlea Edge"', '"A [b] \\\\ “c”"'),
        ("tax", "prices/tax/knives", ("7.25",), "# shipping = 0\n", "# shipping = 0\n\n[prices.tax]\nknives = 7.25\n"),
        ("boxes", "parcels/weights/kinds/chef", ("8 oz",), "chef = 210", "chef = 227"),
    ],
)
async def test_a_number_is_changed_in_its_place(
    name: str, line: str, typed: tuple[str, ...], before: str, after: str, shop: Shop
) -> None:
    """Typed as the shop speaks; nothing else of the text is touched, and undo brings the old text back."""
    app = section(shop, name)
    async with app.run_test(size=SMALL) as pilot:
        await ask(app, pilot, line)
        await fill(pilot, *typed)
        assert "In force." in await back(app, pilot)

    changed = STARTER.replace(before, after, 1)
    assert settings_text(shop) == (changed if name != "boxes" else STARTER.replace(f"\n{before}", f"\n{after}", 1))
    undo(shop, by(minutes=1), steps(shop, "MB")[0].group_id)
    assert settings_text(shop) == STARTER


@pytest.mark.parametrize(
    ("name", "line", "typed", "says"),
    [
        ("prices", "prices/rust", "four", "no amount"),
        ("handling", "handling/wrap_per_knife", "999", "! Wrap_per_knife is a whole number of minutes from 0 to 240"),
        ("hours", "hours/mon", "17:00-08:00", "end before they begin"),
        ("hours", "hours/mon", "closed", "bench hours 08:00-10:30 lie outside the opening hours of mon"),
        ("shop", "shop/zone", "Mars", "is no time zone"),
        ("shop", "shop/country", "ZZ", "No public holidays are known"),
        ("shop", "shop/currency", "", "cannot be empty"),
        ("processes", "edges/plain", "plane", "do you mean plain?"),
        ("gauge", "gauge/always", "chef, cheff", "do you mean chef?"),
        ("keeping", "keeping/second_folder", "stick", "no full path"),
        ("closed", "shop/open_on_holidays", "Gull Day", "no public holiday"),
    ],
)
async def test_a_mistake_is_said_at_its_field_and_loses_nothing(
    name: str, line: str, typed: str, says: str, shop: Shop
) -> None:
    """A sentence beside what was typed, which stays; the numbers in force are as they were."""
    app = section(shop, name)
    async with app.run_test(size=LARGE) as pilot:
        await ask(app, pilot, line)
        await fill(pilot, typed)
        shown = " ".join(dump(app).replace("│", " ").split())
        assert says.casefold() in shown.casefold()
        assert typed in shown
        assert isinstance(app.screen, NumberDialog)

    assert settings_text(shop) == STARTER


async def test_a_kind_is_added_and_taken_out(two_boxes: Shop) -> None:
    """All that a kind has in one form; what open boxes rest on is said before it goes, and they keep their price."""
    app = section(two_boxes, "kinds")
    prices = [box.price_cents for box in look(two_boxes, NOW).boxes]
    async with app.run_test(size=SMALL) as pilot:
        await ask(app, pilot, "kinds/0", "plus")
        await fill(pilot, "sickle [red]", "sk", "plain", "plain", "12 in", "11", "4", "8", "12", "")
        assert "sickle [red]" in await back(app, pilot)
        await ask(app, pilot, "kinds/0", "minus")
        assert isinstance(app.screen, TakeOutDialog)
        assert "in open boxes" in dump(app)
        await pilot.press("minus")
        await back(app, pilot)
        await ask(app, pilot, "kinds/17", "minus")
        assert "No open box rests on it." in dump(app)
        await pilot.press("plus")
        assert "sickle" not in await back(app, pilot)

    assert settings_text(two_boxes) == STARTER
    assert [box.price_cents for box in look(two_boxes, NOW).boxes] == prices


async def test_a_band_goes_where_it_belongs(shop: Shop) -> None:
    """Bands rise: a new one is put between the others, and one that would stand wrong is refused at its field."""
    app = section(shop, "shipping")
    async with app.run_test(size=SMALL) as pilot:
        await ask(app, pilot, "prices/shipping/0", "plus")
        await fill(pilot, "6", "14.50")
        await back(app, pilot)
        await ask(app, pilot, "prices/shipping/1")
        await fill(pilot, "30", "15")
        shown = " ".join(dump(app).replace("│", " ").split())
        assert "write the fewest first. That is line" in shown

    bands = look(shop, NOW).settings.prices.shipping
    assert [(band.knives, band.cents) for band in bands] == [(3, 1200), (6, 1450), (9, 1700), (20, 2500)]


async def test_a_section_and_a_carrier_are_checked_today(shop: Shop) -> None:
    """C writes the day down: for the section, or for the carrier under the cursor."""
    take_settings(shop, by(), STARTER + '\n[[carriers]]\nname = "Gull Post"\n')
    app = section(shop, "carriers")
    async with app.run_test(size=SMALL) as pilot:
        await stand_on(app, pilot, "parcels/carrier_days")
        await pilot.press("c")
        await pilot.pause()
        assert "checked today" in dump(app)
        await stand_on(app, pilot, "carriers/0")
        await pilot.press("c")
        await pilot.pause()
        assert "Checked today: Gull Post" in dump(app)

    parcels = look(shop, NOW).settings.parcels
    assert parcels.last_checked == parcels.carriers[0].last_checked == NOW.date()


async def test_the_whole_goes_out_and_comes_in(shop: Shop) -> None:
    """V writes the text, t takes a file; one with a mistake is named by its line, and nothing is changed."""
    app = section(shop, "tax")
    async with app.run_test(size=LARGE) as pilot:
        await until(pilot, lambda: isinstance(app.screen, SectionScreen))
        await pilot.press("v")
        await pilot.pause()
        path = shop.path.parent / "papers" / "settings.toml"
        assert path.read_bytes() == STARTER.encode()

        path.write_bytes(STARTER.replace("rust = 4.00", "rust = nine").encode())
        await pilot.press("t")
        await until(pilot, lambda: isinstance(app.screen, TakeInDialog))
        await fill(pilot, str(path))
        line = STARTER[: STARTER.index("rust = 4.00")].count("\n") + 1
        assert f"! Line {line}: " in dump(app)
        assert "Nothing was changed." in " ".join(dump(app).replace("│", " ").split())
        assert settings_text(shop) == STARTER

        await fill(pilot, str(path.with_name("none.toml")))
        assert "cannot be read" in dump(app)
        path.write_bytes(STARTER.replace("rust = 4.00", "rust = 9.00").encode())
        await fill(pilot, str(path))
        assert "In force." in await back(app, pilot)

    assert settings_text(shop) == STARTER.replace("rust = 4.00", "rust = 9.00")


async def test_another_window_is_not_overwritten(shop: Shop) -> None:
    """What it changed is said, what was typed stays, and F5 asks over what stands now."""
    app = section(shop, "prices")
    theirs = STARTER.replace("rust = 4.00", "rust = 5.00")
    async with app.run_test(size=SMALL) as pilot:
        await ask(app, pilot, "prices/rust")
        take_settings(shop, by("JT"), theirs)
        await fill(pilot, "6")
        assert "another window" in dump(app)
        assert settings_text(shop) == theirs
        await pilot.press("f5")
        await pilot.pause()
        assert "now “5.00”" in dump(app)
        await pilot.press("enter")
        assert "In force." in await back(app, pilot)

    assert settings_text(shop) == STARTER.replace("rust = 4.00", "rust = 6.00")


async def test_what_was_half_typed_is_there_again(shop: Shop) -> None:
    """Killed between two fields, the next board says so at the section and the line, and the form goes on."""
    app = section(shop, "kinds")
    async with app.run_test(size=SMALL) as pilot:
        await ask(app, pilot, "kinds/2")
        await fill(pilot, "utility", "u, util", "plain", "plain", "6 in", "8.75")

    again = section(shop, "kinds")
    async with again.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(again.screen, SectionScreen))
        await pilot.pause()
        assert HALF_TYPED in dump(again)
        await ask(again, pilot, "kinds/2")
        assert "8.75" in dump(again)
        await pilot.press("tab", *["enter"] * 9)
        assert "In force." in await back(again, pilot)
        assert HALF_TYPED not in dump(again)

    assert settings_text(shop) == STARTER.replace("price = 8.00", "price = 8.75", 1)


async def test_n_leads_there_and_back(two_boxes: Shop) -> None:
    """From the board to a section by its number, and back by one key a step."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("N")
        await until(pilot, lambda: isinstance(app.screen, NumbersScreen))
        await pilot.press("1", "1", "enter")
        await until(pilot, lambda: isinstance(app.screen, SectionScreen))
        assert "local law" in dump(app)
        await pilot.press("full_stop")
        await until(pilot, lambda: isinstance(app.screen, NumbersScreen))
        await pilot.press("N")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
async def test_a_hostile_name_shows_literally(text: str, shop: Shop) -> None:
    """As the name of a carrier and the reason of a closure; what no terminal should see does not come through."""
    app = section(shop, "closed")
    async with app.run_test(size=SMALL) as pilot:
        await ask(app, pilot, "list closures", "plus")
        await fill(pilot, "24 dec", "", text[:50])
        shown = await back(app, pilot)
        assert app.failure is None
        assert not {"\x1b", "\u202e"} & set(shown)
        assert shown.isascii() or "Thu 24 Dec" in shown

    assert look(shop, NOW).settings.closures[0].reason
