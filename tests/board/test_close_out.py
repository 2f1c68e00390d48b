"""The close-out screen over a real shop file: blind, a step at a time, each answer stored, nothing lost by leaving."""

from queueboard.board.screens.summary import SummaryScreen
from queueboard.shop.opening import Shop
from queueboard.words import CloseStep
from tests.board.closing import host, ready, step, type_in
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL
from tests.shop.place import counter, parcel, picture


async def test_before_the_count_nothing_tells_how_many(shop: Shop) -> None:
    """The screen of the blind count shows no digit but those of the box's own number and date."""
    number = ready(shop, parcel(shop, knives=7, things=("roll",)), 6)
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        shown = dump(app).replace(f"box {number}", "")

        assert "Count" in shown
        assert not any(sign.isdigit() for sign in shown)
        assert "roll" not in shown
        assert_screen(app, "close-out-count-80")


async def test_a_box_goes_in_a_handful_of_keys(shop: Shop) -> None:
    """Counted right with nothing else that came along: count, names, label, cash, go."""
    number = ready(shop, parcel(shop, knives=2))
    app = host(shop, number)

    async with app.run_test(size=SMALL, notifications=True) as pilot:
        await type_in(pilot, "2", "+", "+", "1", "no")
        assert "It goes with + or Enter alone." in dump(app)
        await type_in(pilot, "+")

        assert isinstance(app.screen, SummaryScreen)
        assert picture(shop).boxes == ()
        assert "paid" in dump(app)
        await pilot.press("enter")
        await pilot.pause()
        assert app.left


async def test_more_than_is_owed_is_asked_back_once(shop: Shop) -> None:
    """Too much stays on the line and is stored by a second Enter alone; the summary names what is too much."""
    number = ready(shop, parcel(shop, knives=2))
    app = host(shop, number)

    async with app.run_test(size=SMALL, notifications=True) as pilot:
        await type_in(pilot, "2", "+", "+", "1*100")
        assert "not 100.00 USD. The same key once more takes it all the same." in " ".join(dump(app).split())
        assert step(shop, number) is CloseStep.MONEY
        await pilot.press("enter", "+")
        await pilot.pause()

        assert "too much paid" in dump(app)


async def test_a_wrong_count_asks_for_the_tags_and_names_the_missing(shop: Shop) -> None:
    """The missing one is named with where it was last seen, when, by whom, and with what looks like it elsewhere."""
    number = ready(shop, parcel(shop, knives=3, things=("roll", "sheath")))
    counter(shop, name="[/] Ola")
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "2")
        assert f"{number}-1" not in dump(app)
        await type_in(pilot, "1", f"{number}-2")
        assert_screen(app, "close-out-tick-80")
        await type_in(pilot, "")
        assert_screen(app, "close-out-missing-80")
        await type_in(pilot, "")
        assert step(shop, number) is CloseStep.MISSING
        await type_in(pilot, "not in any tray")
        assert step(shop, number) is CloseStep.COMES_WITH
        await type_in(pilot, "1")
        assert_screen(app, "close-out-comes-with-80")
        await type_in(pilot, "")
        assert_screen(app, "close-out-names-80")
        await type_in(pilot, "-")
        assert "do not close the parcel" in " ".join(dump(app).split())
        await type_in(pilot, "+", "+")
        assert_screen(app, "close-out-money-80")
        await type_in(pilot, "5", "pays on Friday")
        assert_screen(app, "close-out-go-80")
        await type_in(pilot, "")

    stays = picture(shop).box(number)
    assert stays is not None
    assert [knife.tag for knife in stays.on_hand if knife.looking_for] == [f"{number}-3"]


async def test_a_found_knife_is_ticked_at_the_missing_step(shop: Shop) -> None:
    """Typing the tag of a missing knife ticks it, and the close-out goes on without a reason."""
    number = ready(shop, parcel(shop, knives=2))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "1", "1", "")
        assert step(shop, number) is CloseStep.MISSING
        await type_in(pilot, "2", "")

    assert step(shop, number) is CloseStep.NAMES


async def test_a_knife_of_another_box_is_sent_back(shop: Shop) -> None:
    """A stranger's tag is refused with the name of the box where it belongs, and nothing is ticked."""
    number = ready(shop, parcel(shop, knives=2))
    other = counter(shop, name="[red]Hale[/]").box.number
    app = host(shop, number)

    async with app.run_test(size=LARGE) as pilot:
        await type_in(pilot, "1", f"{other}-1")

        assert f"It belongs to box {other}, [red]Hale[/]" in dump(app)
        assert "Nothing is ticked yet." in dump(app)


async def test_what_cannot_be_taken_stays_and_is_typed_over(shop: Shop) -> None:
    """A count of 1000 is refused with a sentence and stays on the line; the next digits replace it."""
    number = ready(shop, parcel(shop, knives=2))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "1000")
        assert "A count of 1000 cannot be right" in dump(app)
        await type_in(pilot, "2")

    assert step(shop, number) is CloseStep.NAMES


async def test_a_pick_up_asks_who_collects(shop: Shop) -> None:
    """Enter alone hands it to the customer; the summary names who took it."""
    number = ready(shop, counter(shop, knives=2, name="Ms Verrin"))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "2", "+")
        assert_screen(app, "close-out-collects-80")
        await type_in(pilot, "", "4", "+")

        assert "Ms Verrin" in dump(app)
        assert isinstance(app.screen, SummaryScreen)


async def test_a_part_goes_and_the_rest_is_named_after_the_count(shop: Shop) -> None:
    """Nine of twelve go; the three that stay are named, and the box stays open."""
    number = ready(shop, counter(shop, knives=12), 9)
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "9", "+", "")
        assert_screen(app, "close-out-money-of-a-part-80")
        await type_in(pilot, "6")
        shown = " ".join(dump(app).split())
        assert "What goes today costs 81.00, and 0.00 is paid: 81.00 is missing." in shown
        await type_in(pilot, "1*50", "6")
        assert "81.00, and 50.00 is paid: 31.00 is missing." in " ".join(dump(app).split())
        await type_in(pilot, "1*31", "6")
        assert f"3 not ready: {number}-10, {number}-11, {number}-12" in dump(app)
        await type_in(pilot, "+")

    stays = picture(shop).box(number)
    assert stays is not None
    assert len(stays.on_hand) == 3


async def test_count_anew_begins_blind_again(shop: Shop) -> None:
    """/ asks before it drops ticks; pressed again it drops them and the count, and nothing is told any more."""
    number = ready(shop, parcel(shop, knives=2))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "1", "1", "/")
        assert "/ again drops the count and 1 tick" in dump(app)
        assert step(shop, number) is CloseStep.TICK
        await type_in(pilot, "/")
        assert step(shop, number) is CloseStep.COUNT
        assert "another window" not in dump(app)
        await type_in(pilot, "2")

    assert step(shop, number) is CloseStep.NAMES


async def test_a_box_that_is_not_ready_says_so(shop: Shop) -> None:
    """Nothing ready: a sentence instead of a step, and escape leads back."""
    number = counter(shop).box.number
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert f"Nothing of box {number} is ready to leave." in dump(app)
        await pilot.press("escape")
        await pilot.pause()
        assert app.left


async def test_the_summary_is_written_to_a_file(shop: Shop) -> None:
    """V writes the summary beside the shop file, for the owner's eyes only, and says where."""
    number = ready(shop, counter(shop, knives=1, name="Ms Verrin"))
    app = host(shop, number)

    async with app.run_test(size=LARGE, notifications=True) as pilot:
        await type_in(pilot, "1", "+", "", "2", "+")
        await pilot.press("v")
        await pilot.pause()

    path = shop.path.parent / "papers" / f"box-{number}-2026-11-09.txt"
    assert "Ms Verrin" in path.read_text(encoding="utf-8")
    assert path.stat().st_mode & 0o077 == 0


async def test_one_too_many_in_hand_is_said_of_the_one_that_goes(shop: Shop) -> None:
    """Two counted of a box of one: the sentence speaks of one knife that goes, not of more."""
    number = ready(shop, parcel(shop, knives=1))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "2", "1")
        await pilot.press("enter")
        await pilot.pause()
        assert "1 knife of it goes. One too many is another box's" in dump(app)
