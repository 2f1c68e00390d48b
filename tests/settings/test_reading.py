"""Settings as they are read when nothing is wrong with them."""

from datetime import date, time

import pytest

from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.shapes import Closure, MarketDay, Planning
from queueboard.words import Condition, Edge, PlanOrder

STARTER = seed_text("settings.toml")
SHOP = read_settings(STARTER)


def test_the_starter_is_a_whole_shop() -> None:
    """The starter settings are read without a mistake and fit each other."""
    assert SHOP.name == "Fernlea Edge"
    assert SHOP.zone.key == "America/New_York"
    assert (SHOP.country, SHOP.region, SHOP.length_unit, SHOP.currency) == ("US", "", "in", "USD")
    assert SHOP.ready_by == time(16)
    assert SHOP.parcels.cut_off == time(15, 45)
    assert SHOP.parcels.collection_weekdays == frozenset(range(5))


def test_the_starter_has_270_bench_minutes_a_weekday() -> None:
    """Bench hours come to 270 minutes Monday to Friday and none on Saturday (common practice, no source)."""
    minutes = {
        weekday: sum((end.hour - start.hour) * 60 + end.minute - start.minute for start, end in spans)
        for weekday, spans in SHOP.bench.items()
    }

    assert minutes == dict.fromkeys(range(5), 270)
    assert set(SHOP.hours) == set(range(6))


@pytest.mark.parametrize(
    ("kind", "minutes"),
    [
        ("paring", (2, 4, 6, 10)),
        ("boning", (2, 4, 6, 10)),
        ("fillet", (2, 4, 6, 10)),
        ("chef", (3, 6, 9, 15)),
        ("slicer", (3, 6, 9, 15)),
        ("santoku", (4, 7, 11, 20)),
        ("bread", (3, 6, 10, 20)),
        ("scalloped slicer", (6, 10, 15, None)),
        ("steak", (1, 2, 3, None)),
        ("cleaver", (5, 8, 13, 25)),
        ("yanagiba", (12, 20, 32, 50)),
        ("pocket", (3, 7, 11, 18)),
        ("scissors", (5, 7, 12, None)),
        ("shears", (8, 11, 15, None)),
        ("ceramic", (8, 13, 22, None)),
    ],
)
def test_the_starter_has_the_trade_s_minutes(kind: str, minutes: tuple[int | None, ...]) -> None:
    """Hands-on minutes for tired, dull, small chips and big chips are the trade's (from memory); a gap is declined."""
    found = SHOP.kind(kind)

    assert found is not None
    assert tuple(found.minutes.get(condition) for condition in Condition) == minutes


def test_prices_are_whole_cents() -> None:
    """An amount such as 9.50 is 950 cents exactly, and so is one without decimals."""
    text = STARTER.replace("price = 9.00", "price = 9.07", 1).replace("price = 12.00", "price = 12", 1)
    kinds = {kind.name: kind.price_cents for kind in read_settings(text).kinds}

    assert kinds["chef"] == 907
    assert kinds["bread"] == 1200


def test_set_up_is_one_change_a_belt() -> None:
    """A process costs its belts times the change time, unless it says its own set-up."""
    text = STARTER.replace("change_seconds = 30", "change_seconds = 20")
    processes = {process.name: process for process in read_settings(text).processes}

    assert processes["plain"].set_up_seconds == 60
    assert processes["scalloped"].set_up_seconds == 30
    assert [belt.label for belt in processes["plain"].belts] == ["P240", "P400", "16 um"]
    assert [belt.grit_um for belt in processes["plain"].belts] == [58.5, 35.0, 16.0]


def test_closures_and_markets_are_read() -> None:
    """A closure may be one day; a market keeps its rule as written."""
    text = STARTER + (
        '[[closures]]\nfirst = 2026-12-24\nlast = 2027-01-02\nreason = "winter break"\n'
        '[[closures]]\nfirst = 2028-01-01\nlast = 2028-12-31\nreason = "a year of 366 days"\n'
        '[[closures]]\nfirst = 2026-08-03\nreason = "belts"\n'
        '[[markets]]\nname = "Harbour market"\nrule = "FREQ=MONTHLY;BYDAY=3SA"\nstart = 2026-01-01\n'
    )
    shop = read_settings(text)

    assert shop.closures == (
        Closure(first=date(2026, 12, 24), last=date(2027, 1, 2), reason="winter break"),
        Closure(first=date(2028, 1, 1), last=date(2028, 12, 31), reason="a year of 366 days"),
        Closure(first=date(2026, 8, 3), last=date(2026, 8, 3), reason="belts"),
    )
    assert shop.markets == (MarketDay(name="Harbour market", rule="FREQ=MONTHLY;BYDAY=3SA", start=date(2026, 1, 1)),)


def test_edges_name_their_process() -> None:
    """The table of edges is read by the shop's words for edges."""
    assert SHOP.edges[Edge.SERRATED] == "serrated"
    assert SHOP.edges[Edge.SINGLE_LEFT] == "single bevel"


def test_text_of_people_is_made_safe() -> None:
    """A mark that turns the line round never reaches a screen, brackets stay as they were written."""
    shop = read_settings(STARTER.replace('"Fernlea Edge"', r'"[red]Fern\u202elea[/]"'))

    assert shop.name == "[red]Fernlea[/]"


def test_the_starter_says_what_holds_when_nothing_is_said() -> None:
    """A shop that leaves out the whole table of planning, or every line of it, plans as the starter does."""
    start = STARTER.index("[planning]")
    end = STARTER.index("\n\n", start)

    assert SHOP.planning == Planning()
    assert read_settings(STARTER[:start] + STARTER[end:]) == SHOP
    assert read_settings(STARTER[:start] + "[planning]" + STARTER[end:]) == SHOP


def test_a_shop_chooses_how_it_plans() -> None:
    """What is written is what holds, the order in its own words."""
    text = STARTER.replace('order = "fewest late"', 'order = "earliest due first"').replace("people = 1", "people = 2")

    assert read_settings(text).planning == Planning(order=PlanOrder.EARLIEST_DUE, people=2)


def test_belts_are_known_by_their_label() -> None:
    """Life, cost and when to order, whatever the case of the label; nothing for a label that nobody wrote."""
    known = SHOP.belt_kind("p400")

    assert known is not None
    assert (known.life_knives, known.cost_cents, known.reorder_at) == (150, 300, 3)
    assert known.knife_cents == pytest.approx(2.0)
    assert SHOP.belt_kind("P36") is None


def test_a_text_from_before_belts_were_known_still_reads() -> None:
    """Without [[belts.kinds]] nothing is known of belts, and all else stands."""
    start, end = STARTER.index("[[belts.kinds]]"), STARTER.index("[[processes]]")
    old = read_settings(STARTER[:start] + STARTER[end:])

    assert old.belt_kinds == ()
    assert old.processes == SHOP.processes
