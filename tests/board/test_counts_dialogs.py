"""Counts, moved and found knives over a real shop file: keys, dialogs, and the sentences they refuse with."""

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.dialogs import CorrectDialog, CountDialog, MoveToBoxDialog
from queueboard.board.screens.dialogs.found import NoteFoundDialog, SettleFoundDialog
from queueboard.board.screens.found import FoundScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.board.screens.tray import TrayDialog
from queueboard.priced_words import Finding
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.words import Column
from tests.board.answering import COUNTER, PARCEL, answered, refused
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, until
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, picture
from tests.shop.undo_counting import found_one, lost_one, one_too_many


async def test_waiting_asks_for_the_answer_to_the_count(shop: Shop) -> None:
    """On a box with a knife beyond its note w asks yes or not theirs; yes charges it, the total before stays told."""
    made = one_too_many(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: BoxScreen(desk, made.box.id))
    async with app.run_test(size=LARGE) as pilot:
        assert "apart until the yes" in dump(app)
        await pilot.press("up", "w")
        assert isinstance(app.screen, CountDialog)
        await pilot.press("1")
        await pilot.pause()
        assert isinstance(app.screen, BoxScreen)
        assert f"yes to {made.box.number}-3" in dump(app)
        assert "before" in dump(app)

    assert box(shop, made.box.number).apart == ()


async def test_a_tray_leaves_the_knife_beyond_the_note(shop: Shop) -> None:
    """Enter moves the other two and names the third; what is left to move is none, and the sentence says which key."""
    made = one_too_many(shop)
    number = made.box.number
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        assert isinstance(app.screen, BoardScreen)
        app.screen.move_box(made, -1)
        await pilot.pause()
        assert f"Nothing of {number} can move that way." in dump(app)
        await pilot.press(*str(number), "plus")
        await until(pilot, lambda: isinstance(app.screen, TrayDialog))
        assert f"not moved, beyond the note (w asks for the yes to the count): {number}-3" in dump(app)
        await pilot.press("enter")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        assert [one.column for one in box(shop, number).knives] == [Column.ON_BENCH, Column.ON_BENCH, Column.RECEIVED]

        move_knives(shop, by(), box(shop, number).knives[:2], Column.READY)
        app.look_around()
        await pilot.press(*str(number), "plus")
        assert f"! Nothing of {number} can move: {number}-3 waits for the yes to the count. w takes" in dump(app)


async def test_the_dialog_of_a_count_kept_as_text(shop: Shop) -> None:
    """Both counts, the knife beyond the note with its price, and the total that each answer leads to."""
    made = one_too_many(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: CountDialog(desk, made.box.id))
    async with app.run_test(size=SMALL):
        assert_screen(app, "dialog-count")


async def test_not_theirs_asks_for_the_place(shop: Shop) -> None:
    """Without a place it stays open with a sentence; with one the knife is on the found list."""
    made = one_too_many(shop)
    said = await refused(shop, lambda desk: CountDialog(desk, made.box.id), "<2>", "")
    assert "Where does the knife lie?" in said
    assert await answered(shop, lambda desk: CountDialog(desk, made.box.id), "<2>", "shelf F")
    assert [found.place for found in picture(shop).found] == ["shelf F"]


async def test_a_knife_is_moved_into_another_box(two_boxes: Shop) -> None:
    """No such box and no reason are refused with what was typed standing; then it has a tag there."""
    knife = box(two_boxes, PARCEL).knives[0]
    assert "no open box 999" in await refused(two_boxes, lambda desk: MoveToBoxDialog(desk, knife), "999")
    said = await refused(two_boxes, lambda desk: MoveToBoxDialog(desk, knife), str(COUNTER), "")
    assert "never goes silently" in said
    assert await answered(two_boxes, lambda desk: MoveToBoxDialog(desk, knife), str(COUNTER), "typed on the wrong box")
    assert box(two_boxes, COUNTER).sum.moved_in == 1

    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoxScreen(desk, box(two_boxes, PARCEL).box.id))
    async with app.run_test(size=LARGE):
        assert "3 counted in = 1 moved out + 2 on hand" in dump(app)
        assert "100-1 moved to box 101" in dump(app)
        assert "typed on the wrong box" in dump(app)


async def test_a_knife_looked_for_is_found_in_another_tray(two_boxes: Shop) -> None:
    """The same key on a knife that is looked for says in whose tray it was."""
    lost = lost_one(two_boxes)
    knife = lost.knives[0]
    assert await answered(two_boxes, lambda desk: MoveToBoxDialog(desk, knife), str(COUNTER), "same handle")
    assert not box(two_boxes, lost.box.number).knives[0].looking_for


async def test_a_found_knife_is_noted_and_settled(two_boxes: Shop) -> None:
    """Noted as at receiving with its place; into a box with a reason, or in words."""
    said = await refused(two_boxes, NoteFoundDialog, "chef 8, red dot", "")
    assert "Where does the knife lie?" in said
    assert await answered(two_boxes, NoteFoundDialog, "chef 8, red dot", "wash sink")
    (found,) = picture(two_boxes).found
    said = await refused(two_boxes, lambda desk: SettleFoundDialog(desk, found), "<1>", str(PARCEL), "")
    assert "never goes silently" in said
    assert await answered(two_boxes, lambda desk: SettleFoundDialog(desk, found), "<1>", str(PARCEL), "the red dot")
    assert box(two_boxes, PARCEL).sum.added == 1

    second = found_one(two_boxes)
    assert await answered(two_boxes, lambda desk: SettleFoundDialog(desk, second), "<2>", "Ms Verrin took it, 11:40")
    assert picture(two_boxes).found == ()


async def test_found_knives_stand_on_top_and_have_a_screen(two_boxes: Shop) -> None:
    """While there is one the day says FOUND; F lists it with its place, its day and who noted it."""
    found_one(two_boxes)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert "FOUND 1" in dump(app)
        await pilot.press("F")
        await pilot.pause()
        assert isinstance(app.screen, FoundScreen)
        assert_screen(app, "list-found-80")


async def test_an_added_knife_prints_the_stub_again(two_boxes: Shop) -> None:
    """Its tag, whether the date holds, and the stub with the new count stand there to be printed."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoxScreen(desk, box(two_boxes, COUNTER).box.id))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("k")
        await fill(pilot, "cleaver dull")
        await pilot.pause()
        assert isinstance(app.screen, ReceivedScreen)
        papers = app.screen.text()
        shown = " ".join(dump(app).split())

    assert "101-3 is added: 3 knives here." in shown
    assert "it still holds" in shown
    assert "3, three knives" in papers
    assert "2 counted in + 1 added = 3 on hand" in " ".join(papers.split())
    assert "\n101-3\n" in papers
    assert "\n101-1\n" not in papers
    assert by().now == NOW


async def test_findings_are_corrected_in_a_field_of_their_own(two_boxes: Shop) -> None:
    """Words of the list are stored in its order; another word is answered with the list."""
    knife = box(two_boxes, COUNTER).knives[0]
    fields = ("<1>", "chef", "", "plain", "dull")
    said = await refused(two_boxes, lambda desk: CorrectDialog(desk, knife), *fields, "shiny", "", "")
    assert "“shiny” is not in the list" in said
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, knife), *fields, "freckles, very dull", "", "")
    assert box(two_boxes, COUNTER).knives[0].findings == (Finding.VERY_DULL, Finding.FRECKLES)
