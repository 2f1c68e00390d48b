"""The papers of one busy morning, kept as texts that a person can read."""

from dataclasses import replace
from datetime import date

from queueboard.calendar.days import ShopCalendar, bench_windows
from queueboard.papers.day_sheet import day_sheet
from queueboard.papers.lists import boxes_list, found_list, labels_list, late_list
from queueboard.papers.one_box import box_sheet
from queueboard.papers.slips import gone_summary, handle_tags, stub
from queueboard.phrases.week import WHY_ROOM, day_head_words, due_words, later_words, load_words, rush_words
from queueboard.planning.order import plan_work
from queueboard.shop.picture import Picture
from queueboard.shop.quoting import week
from queueboard.values.gone import GoneBox
from queueboard.values.plan import ProcessWork
from queueboard.values.totals import Totals
from queueboard.words import Settling
from tests.busy_morning import busy_morning
from tests.kept import assert_kept
from tests.pictures import at, knife, picture

MORNING = busy_morning()


def with_its_bench(seen: Picture) -> Picture:
    """The picture with the bench hours of its settings, and a closure on Saturday."""
    closed = ((date(2026, 11, 28), "the fair"),)
    bench = bench_windows(ShopCalendar(seen.settings, dict(closed)), seen.now, 90)
    processes = tuple(ProcessWork(name=p.name, set_up_seconds=90, run_size=12) for p in seen.settings.processes)
    return replace(seen, closed_days=closed, ledger=plan_work((), processes, bench, seen.now).ledger)


def test_the_day_sheet_reads_as_kept() -> None:
    """The day sheet holds the runs, what leaves, late boxes, labels, who is waited for, the week and the cautions."""
    assert_kept("paper-day", day_sheet(with_its_bench(MORNING)))


def test_the_day_sheet_says_the_week_as_its_screen_does() -> None:
    """Each day has the screen's words, and the name of a closure that looks like markup stays as typed."""
    seen = replace(with_its_bench(MORNING), closed_days=((date(2026, 11, 28), "[red]fair[/]"),))

    lines = [line.strip() for line in day_sheet(seen).splitlines()]

    for load in week(seen):
        words = "; ".join(filter(None, (load_words(load), due_words(load))))
        assert any(line.startswith(day_head_words(load, seen.now.date())) and line.endswith(words) for line in lines)
    assert "Sat 28 Nov        CLOSED · [red]fair[/]" in lines
    assert {later_words(seen, week(seen)), rush_words(seen), *WHY_ROOM} <= set(lines)


def test_the_late_list_reads_as_kept() -> None:
    """The late list has the late box before the one that will be late, each with by how much."""
    assert_kept("paper-late", late_list(MORNING))


def test_the_labels_list_reads_as_kept() -> None:
    """The labels list has the label that dies today before the one to buy, each with what to do."""
    assert_kept("paper-labels", labels_list(MORNING))


def test_the_boxes_list_reads_as_kept() -> None:
    """The table of all boxes has each box's totals, then the customers with more than one box, then the sums."""
    assert_kept("paper-boxes", boxes_list(MORNING))


def test_one_box_reads_as_kept() -> None:
    """A box's paper has its phone sentence, totals, knives, promises, label and customer."""
    box = MORNING.box(420)

    assert box is not None
    assert_kept("paper-box", box_sheet(box, MORNING))


def test_the_phone_sentences_read_as_kept() -> None:
    """Every box of the morning has a sentence that can be read aloud."""
    assert_kept("paper-find", found_list(MORNING.boxes, MORNING))


def test_stub_and_tags_read_as_kept() -> None:
    """The stub has count, things, date, price and limit; a tag has the wish in capitals, neither phone nor price."""
    found = MORNING.box(417)
    assert found is not None
    wished = replace(found.knives[1], wish="keep the patina, please")
    box = replace(
        found, box=replace(found.box, not_above_cents=6000), knives=(found.knives[0], wished, *found.knives[2:])
    )

    assert box is not None
    assert_kept("paper-stub", stub(box, MORNING))
    assert_kept("paper-tags", handle_tags(box, MORNING))
    assert box.customer.phone not in handle_tags(box, MORNING)
    assert "EUR" not in handle_tags(box, MORNING)


def test_the_summary_of_a_close_out_reads_as_kept() -> None:
    """The summary says what left, what stays, what is looked for and why, the money, and how to open the parcel."""
    box = MORNING.box(417)

    assert box is not None
    gone = GoneBox(
        box=box.box,
        customer=box.customer,
        knives=box.knives[:2],
        things=box.things[:1],
        missing=(box.knives[2],),
        missing_things=box.things[1:],
        missing_reason="the customer agreed on the phone",
        staying=(box.knives[3],),
        totals=Totals(knives_cents=3600, paid_cents=1000),
        settled=Settling.UNPAID,
        settled_why="known for years",
        handed_to="",
        at=at(15, 30),
        by="MB",
        closed=False,
    )
    assert_kept("paper-gone", gone_summary(gone, MORNING.settings))


def test_an_empty_board_says_what_to_do_next() -> None:
    """Without boxes each list says so, and the day sheet says how to receive one."""
    empty = picture()

    assert "No box is open. Receive one" in day_sheet(empty)
    assert "No box is open. Receive one" in boxes_list(empty)
    assert late_list(empty).startswith("Nothing is late")
    assert labels_list(empty).startswith("No return label")


def test_a_knife_of_an_unknown_kind_still_prints() -> None:
    """A kind that the settings no longer have is printed as it was typed."""
    from tests.pictures import box_picture

    box = box_picture(500, knives_=(knife("500-1", kind="plane iron", length_mm=None),))

    assert "500-1" in box_sheet(box, picture(box))
    assert "plane iron" in box_sheet(box, picture(box))
