"""A shop on a server: moved there and back, a queue of writers, and a connection that breaks where it hurts most."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from peewee import IntegrityError

from queueboard.errors import BusyError, ChangedError, FileError, LostError
from queueboard.records import migrations, server_schema
from queueboard.records.auditing import audit
from queueboard.records.connection import ShopDatabase
from queueboard.records.copies import copies_of
from queueboard.records.engine import engine_of
from queueboard.records.migrations import STEPS
from queueboard.records.pointing import address_in
from queueboard.records.tables import BoxRow
from queueboard.shop import moving, noting
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.checking import check
from queueboard.shop.erasing import erase, find_customers
from queueboard.shop.keeping import copy_to, daily_copy
from queueboard.shop.looking import last_line
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.restoring import restore
from queueboard.values.progress import Doing, listening
from queueboard.words import Column
from tests import lending
from tests.bench.kill_works import goes
from tests.shop.acts import LENIENT
from tests.shop.place import NOW, box, by, counter, parcel, picture, started, state
from tests.shop.test_carrying import busy

pytestmark = pytest.mark.server


def groups(shop: Shop) -> list[object]:
    """The actions in history, one line each; one that was done twice would stand here twice."""
    return [row[0] for row in shop.database.rows("SELECT group_id FROM history WHERE line = 0 ORDER BY id")]


def written(shop: Shop, target: Path) -> bytes:
    """All of a shop as it is written out."""
    write_out(shop, target)
    close_shop(shop)
    return target.read_bytes()


def there_and_back(tmp_path: Path, first: bytes) -> None:
    """Take what was written out to a server and back into a file; each writes out the same bytes."""
    out = tmp_path / "first.jsonl"
    if not out.exists():
        out.write_bytes(first)
    take_in(tmp_path / "there.qb", out, by())
    there = open_shop(tmp_path / "there.qb")
    assert there.on_server
    assert written(there, tmp_path / "second.jsonl") == first

    take_in(tmp_path / "back.file", tmp_path / "second.jsonl", by())
    back = open_shop(tmp_path / "back.file")
    assert not back.on_server
    assert written(back, tmp_path / "third.jsonl") == first


def test_a_shop_in_a_file_goes_to_a_server_and_back(tmp_path: Path) -> None:
    """What a file writes out, a server takes and writes out again to the byte, and a new file after it."""
    shop = started(tmp_path / "a.file")
    assert not shop.on_server
    made = parcel(shop, name="Élodie “Perpetua”\u2028Quillon", things=("a roll 🎏",))
    moving.move_knives(shop, by("K"), made.knives, Column.ON_BENCH)

    there_and_back(tmp_path, written(shop, tmp_path / "first.jsonl"))


def test_a_shop_begun_on_a_server_goes_to_a_file_and_back(tmp_path: Path) -> None:
    """The other way round, with a step undone and a row taken away."""
    shop = busy(tmp_path)
    assert shop.on_server

    there_and_back(tmp_path, written(shop, tmp_path / "first.jsonl"))


def test_taking_a_shop_to_a_server_says_how_far_it_is(tmp_path: Path, shop: Shop) -> None:
    """All its rows are told, up to the last."""
    told: list[tuple[int, int]] = []
    write_out(shop, tmp_path / "out.jsonl")

    with listening(lambda doing, done, total: told.append((done, total)) if doing is Doing.HANDING_OVER else None):
        take_in(tmp_path / "there.qb", tmp_path / "out.jsonl", by())
    assert told
    assert all(0 <= done <= total for done, total in told)
    assert told[-1][0] == told[-1][1]


def test_a_shop_that_was_taken_to_a_server_goes_on(tmp_path: Path, shop: Shop) -> None:
    """New rows and lines are numbered behind those that came, and all fits its own history."""
    parcel(shop)
    write_out(shop, tmp_path / "out.jsonl")
    take_in(tmp_path / "there.qb", tmp_path / "out.jsonl", by())
    there = open_shop(tmp_path / "there.qb")

    made = parcel(there, name="Ms Oake")
    moving.move_knives(there, by(), made.knives, Column.READY)

    assert made.box.number == 101
    assert list(audit(there.database.raw())) == []
    close_shop(there)


def test_who_was_erased_is_erased_again_on_a_server(tmp_path: Path, shop: Shop) -> None:
    """An export older than an erasing does not bring the person back, where the list of the erased lies beside it."""
    gone = counter(shop, name="Forgetmenot")
    write_out(shop, shop.path.with_name("old.jsonl"))
    for _ in goes(shop, gone.box.number, "J"):
        pass
    take_settings(shop, by(), LENIENT)
    erase(shop, by(), find_customers(shop, "Forgetmenot")[0], "asked by letter", though_owing=True)

    there = shop.path.with_name("there.qb")
    assert take_in(there, shop.path.with_name("old.jsonl"), by())[1] == 1
    again = open_shop(there)
    assert find_customers(again, "Forgetmenot") == ()
    close_shop(again)


def test_writers_queue_and_history_is_numbered_in_order(shop: Shop) -> None:
    """While one writes the other is told that it is busy; nobody sees a line before all those below it."""
    made = parcel(shop)
    window = open_shop(shop.path)
    seen = last_line(window)
    with shop.writing(by("K"), "note_box") as writing:
        writing.change(BoxRow, made.box.id, None, note="first")
        assert last_line(window) == seen
        with pytest.raises(BusyError, match="another window was just writing"):
            noting.note_knife(window, by("L"), made.knives[0], "second")
    noting.note_knife(window, by("L"), made.knives[0], "second")

    ids = [row[0] for row in shop.database.rows("SELECT id FROM history ORDER BY id")]
    assert ids == list(range(1, len(ids) + 1))
    assert last_line(window) == len(ids)
    close_shop(window)


def test_the_other_window_has_just_changed_the_knife(shop: Shop) -> None:
    """A write on what somebody else has changed since is refused with who it was; nothing is stored."""
    made = parcel(shop)
    window = open_shop(shop.path)
    moving.move_knives(window, by("K", minutes=1), made.knives[:1], Column.ON_BENCH)
    before = state(shop)

    with pytest.raises(ChangedError, match=r"was changed meanwhile; nothing was stored\. Look again"):
        moving.move_knives(shop, by("J", minutes=2), made.knives[:1], Column.TESTING)
    assert state(shop) == before
    close_shop(window)


Commit = Callable[[ShopDatabase], None]


@pytest.fixture
def cuts(monkeypatch: pytest.MonkeyPatch, shop: Shop) -> Iterator[list[str]]:
    """Where the connection is cut at the next commits: before it, or behind it, so that nobody hears of it."""
    from queueboard.records.server import ServerDatabase

    commit: Commit = ServerDatabase.commit
    places = list[str]()

    def cut_commit(database: ShopDatabase) -> None:
        place = places.pop(0) if places else ""
        if place == "behind":
            commit(database)
        if place:
            lending.cut(shop.path)
            database.one("SELECT 1")
        commit(database)

    monkeypatch.setattr(ServerDatabase, "commit", cut_commit)
    yield places
    assert places == []


def test_an_action_whose_commit_was_not_heard_is_done_once(shop: Shop, cuts: list[str]) -> None:
    """The server stored it and the answer was lost: it is found in history by its id, and said to be saved."""
    made = parcel(shop)
    before = groups(shop)
    cuts.append("behind")
    noting.note_box(shop, by(), made.box, "heard late")

    assert len(groups(shop)) == len(before) + 1
    assert picture(shop).boxes[0].box.note == "heard late"


def test_an_action_cut_before_its_commit_is_not_done(shop: Shop, cuts: list[str]) -> None:
    """The server never got it: that is said, and the same once more does it once."""
    made = parcel(shop)
    before = groups(shop)
    cuts.append("before")
    with pytest.raises(LostError):
        noting.note_box(shop, by(), made.box, "twice typed")
    assert groups(shop) == before

    noting.note_box(shop, by(), made.box, "twice typed")
    assert len(groups(shop)) == len(before) + 1


def test_a_close_out_whose_connection_is_cut_at_every_step(shop: Shop, cuts: list[str]) -> None:
    """Each step of a close-out is done once and no more, although no answer of the server ever arrives."""
    number = counter(shop).box.number
    calm = len(groups(shop))
    steps = 0
    for _ in _each_cut(goes(shop, number, "K"), cuts):
        steps += 1

    assert len(groups(shop)) == calm + steps
    assert len(set(groups(shop))) == len(groups(shop))
    assert picture(shop).boxes == ()
    assert list(audit(shop.database.raw())) == []


def _each_cut(steps: Iterator[str], cuts: list[str]) -> Iterator[str]:
    while True:
        cuts.append("behind")
        try:
            yield next(steps)
        except StopIteration:
            cuts.clear()
            return


def test_a_shop_that_is_filled_is_not_cut_loose(tmp_path: Path) -> None:
    """Looking years of history over, the program leaves the server alone for longer than an action may."""
    from queueboard.records import server  # where there is no server, its driver may be missing as well

    lending.new_database(tmp_path / "there.qb")
    database = server.connect(str(address_in(tmp_path / "there.qb")), 1000)
    question = "SHOW idle_in_transaction_session_timeout"
    with database.atomic():
        assert database.one(question) == f"{server.CUT_LOOSE_MS // 1000}s"
    assert server.make(database, lambda raw: raw.execute(question).fetchone()) == ("0",)
    database.close()


def test_copies_are_the_servers_own(shop: Shop, tmp_path: Path) -> None:
    """No copy is made in the morning, and what only a file has is refused with what to do instead."""
    parcel(shop)
    assert daily_copy(shop, NOW) is None
    assert copies_of(shop.path) == ()
    with pytest.raises(FileError, match="pg_dump"):
        copy_to(shop, tmp_path / "stick.qb", NOW)
    with pytest.raises(FileError, match="pg_dump"):
        check(shop.path, NOW)
    with pytest.raises(FileError, match="pg_dump"):
        restore(shop.path, tmp_path / "stick.qb", by())
    assert box(shop, 100).box.counted == 3


@pytest.mark.parametrize(
    "sql", ["UPDATE history SET reason = 'x'", "DELETE FROM history", "TRUNCATE history, personal"]
)
def test_history_is_only_ever_added_to(shop: Shop, sql: str) -> None:
    """The server's own guards refuse it, whoever asks."""
    parcel(shop)
    with pytest.raises(IntegrityError, match="history is only ever added to"):
        shop.database.run(sql)


@pytest.mark.parametrize("layout", [1, len(STEPS) - 1])
def test_an_older_layout_on_a_server_is_led_on(layout: int, tmp_path: Path) -> None:
    """The first board of a newer queueboard brings the tables up, in one transaction; they are then today's."""
    from queueboard.records import server  # where there is no server, its driver may be missing as well

    path = tmp_path / "old.qb"
    lending.new_database(path)
    database = server.connect(str(address_in(path)), 1000)
    with database.atomic():
        database.run(server_schema.FIRST)
        for statement in migrations.statements("\n".join(STEPS[:layout])):
            for made in server_schema.for_server(statement):
                database.run(made)
        database.run("INSERT INTO layout_now (layout) VALUES (?)", (layout,))
        database.run("INSERT INTO shop (id, salt, created_us) VALUES (1, ?, 0)", ("00" * 16,))
    database.close()

    shop = open_shop(path)
    assert shop.database.layout() == len(STEPS)
    assert not engine_of(shop.database.raw()).strange()
    close_shop(shop)
