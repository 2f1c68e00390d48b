"""A customer's data: shown whole, and erased for good without breaking counts, money or the chain."""

import contextlib
import json
import sqlite3
from datetime import timedelta
from pathlib import Path

import pytest

from queueboard.errors import ChangedError, ReasonNeededError, RuleError
from queueboard.papers.known import known_facts, write_known
from queueboard.records.auditing import audit
from queueboard.records.copies import as_written, copies_folder, sum_file
from queueboard.records.tables import STATE
from queueboard.seedfiles import seed_text
from queueboard.shop import closing, correcting, erasing, money, noting, promising, receiving, undoing
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.forgetting import forget_in_copies
from queueboard.shop.keeping import copy_to, daily_copy
from queueboard.shop.looking import look
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.restoring import restore
from queueboard.values.actor import Actor
from queueboard.values.customer import Customer
from queueboard.values.new import NewPromise
from queueboard.words import PromiseKind
from tests.shop import undo_closing
from tests.shop.place import NOW, box, by, cash, counter, everything, small_shop, state

WORDS = ("Perpetua", "Quillon", "555 0142", "Dunmere", "Larch Lane", "ferry", "nick 1", "grandmother", "Barnaby")
"""What was typed about the customer, in every place where a person can type."""

LATER = Actor(initials="J", now=NOW + timedelta(days=731))


def gone(shop: Shop) -> Customer:
    """A customer whose box has gone, with words in every place, some of them corrected since."""
    number = undo_closing.all_but_sent(shop)
    customer = box(shop, number).customer
    correcting.correct_customer(
        shop, by(), customer, name="Perpetua Quillon", address="9 Larch Lane", notes="knows Barnaby at the ferry"
    )
    noting.add_thing(shop, by(), box(shop, number).box, "her grandmother's roll")
    noting.note_box(shop, by(), box(shop, number).box, "asks for Barnaby")
    told = NewPromise(kind=PromiseKind.DAY, day=(NOW + timedelta(days=3)).date(), told_to="Quillon", reason="ferry")
    promising.promise(shop, by(), box(shop, number).box, told)
    actor = by("J", minutes=1)
    noting.note_box(shop, actor, box(shop, number).box, "Barnaby again")
    undoing.undo(shop, by("J", minutes=2), actor.group_id, "Barnaby was the other one")
    money.take_payment(shop, by(), box(shop, number).box, cash(2700))
    closing.tick_thing(shop, by(), undo_closing.close(shop, number), box(shop, number).things[0].id)
    closing.things_done(shop, by(), undo_closing.close(shop, number))
    closing.send_off(shop, by(), undo_closing.close(shop, number))
    return next(one for one in receiving.customers(shop) if one.id == customer.id)


@pytest.fixture
def customer(shop: Shop) -> Customer:
    """That customer."""
    return gone(shop)


def unworded(shop: Shop) -> dict[str, list[dict[str, object]]]:
    """All state but people's words and versions: counts, money, days, places."""
    return {
        name: [{key: cell for key, cell in row.items() if key not in STATE[name].personal} for row in rows]
        for name, rows in state(shop).items()
        if name not in {"erased_customer", "settings"}
    }


def test_no_word_is_left_anywhere_in_the_file(shop: Shop, customer: Customer) -> None:
    """Neither in a row nor beside history nor in a freed corner of the file is any of it; before, all of it was."""
    assert not [word for word in WORDS if word.encode() not in everything(shop)]

    erasing.erase(shop, LATER, customer, "asked by letter")

    assert not [word for word in WORDS if word.encode() in everything(shop)]


def test_counts_money_and_the_chain_stay(shop: Shop, customer: Customer) -> None:
    """Every amount, count, day and place is as before, and the file is sound against its own history."""
    before = unworded(shop)
    erasing.erase(shop, LATER, customer, "asked by letter")

    assert unworded(shop) == before
    assert list(audit(shop.database.raw())) == []


def test_other_customers_keep_every_word(shop: Shop, customer: Customer) -> None:
    """Only what hangs on this customer goes."""
    other = counter(shop, name="Ms Verrin", things=("a blue roll",))
    noting.note_box(shop, by(), other.box, "rings twice")
    erasing.erase(shop, LATER, customer, "asked by letter")

    there = box(shop, other.box.number)
    assert (there.customer.name, there.box.note) == ("Ms Verrin", "rings twice")
    known = erasing.all_known(shop, there.customer)
    assert {"Ms Verrin", "rings twice", "a blue roll"} <= {text for *_, text in known.earlier_words}


def test_who_is_erased_is_not_found_again(shop: Shop, customer: Customer) -> None:
    """No list offers the entry, and a second erasing says that there is none."""
    erasing.erase(shop, LATER, customer, "asked by letter")

    assert receiving.customers(shop) == ()
    assert erasing.find_customers(shop, "erased") == ()
    with pytest.raises(RuleError, match="There is no customer"):
        erasing.erase(shop, LATER, customer, "asked by letter")


def test_erasing_waits_for_the_shop_s_own_period(shop: Shop, customer: Customer) -> None:
    """A day too early the sentence says from when on; nothing is changed."""
    before = state(shop)
    early = Actor(initials="J", now=NOW + timedelta(days=729))
    with pytest.raises(RuleError, match=r"can be erased from 2028-11-08 on: 730 days after the last box"):
        erasing.erase(shop, early, customer, "asked by letter")

    assert state(shop) == before


def test_the_period_is_the_shop_s(shop: Shop, customer: Customer) -> None:
    """With another number in the settings another day holds."""
    take_settings(shop, by(), seed_text("settings.toml").replace("= 730", "= 0"))

    erasing.erase(shop, by("J", minutes=3), customer, "asked by letter")

    assert receiving.customers(shop) == ()


def test_a_box_that_is_here_keeps_its_customer(shop: Shop) -> None:
    """Nobody is erased whose knives lie in the shop."""
    made = counter(shop)

    with pytest.raises(RuleError, match=f"Box {made.box.number} of this customer is still here"):
        erasing.erase(shop, LATER, made.customer, "asked by letter")


def test_a_reason_is_asked_for(shop: Shop, customer: Customer) -> None:
    """It is for good, so history keeps why."""
    with pytest.raises(ReasonNeededError, match="say why"):
        erasing.erase(shop, LATER, customer, " ")


def test_a_step_from_before_cannot_bring_a_word_back(shop: Shop, customer: Customer) -> None:
    """Undo of anything that touched the customer is refused, and stores nothing."""
    groups = [str(row[0]) for row in shop.database.rows("SELECT DISTINCT group_id FROM history WHERE by = 'J'")]
    erasing.erase(shop, LATER, customer, "asked by letter")
    for group in groups:
        with contextlib.suppress(RuleError, ChangedError):
            undoing.undo(shop, Actor(initials="J", now=LATER.now), group, "back")

    assert not [word for word in WORDS if word.encode() in everything(shop)]
    assert list(audit(shop.database.raw())) == []


def test_an_entry_put_together_with_it_goes_too(shop: Shop, customer: Customer) -> None:
    """A customer entered twice and put together is erased under both entries."""
    double = receiving.add_customer(shop, by(), name="Quillon, Perpetua", phone="555 0142")
    twice = next(one for one in receiving.customers(shop) if one.id == double)
    correcting.merge_customers(shop, by(), customer, twice)
    kept = next(one for one in receiving.customers(shop) if one.id == customer.id)

    erasing.erase(shop, LATER, kept, "asked by letter")

    assert not [word for word in WORDS if word.encode() in everything(shop)]


def test_all_that_is_known_is_for_that_customer(shop: Shop, customer: Customer, tmp_path: Path) -> None:
    """Every word and every amount is in it, nothing of anybody else; the file is the owner's alone."""
    counter(shop, name="Ms Verrin")
    target = tmp_path / "quillon.json"
    write_known(erasing.all_known(shop, customer), target)
    text = target.read_text(encoding="utf-8")

    assert not [word for word in WORDS if word not in text]
    assert "Verrin" not in text
    facts = json.loads(text)
    assert [payment["cents"] for payment in facts["rows"]["payment"]] == [2700]
    assert facts == json.loads(json.dumps(known_facts(erasing.all_known(shop, customer))))
    assert target.stat().st_mode & 0o077 == 0


def erased_since(folder: Path, *, listed: bool) -> tuple[Path, Path]:
    """A shop in which a customer was erased after a copy was made: the file and the copy, with or without the list."""
    shop = small_shop(folder)
    customer = gone(shop)
    copy = folder / "stick" / "copy.qb"
    copy.parent.mkdir()
    copy_to(shop, copy, NOW)
    erasing.erase(shop, LATER, customer, "asked by letter")
    close_shop(shop)
    if not listed:
        shop.path.with_name("test-erased.txt").unlink()
    return shop.path, copy


@pytest.mark.sqlite_file
@pytest.mark.parametrize("listed", [True, False])
def test_a_copy_from_before_cannot_bring_a_customer_back(listed: bool, tmp_path: Path) -> None:
    """Going back erases again who was erased since, known by the list beside the file or by the file itself."""
    path, copy = erased_since(tmp_path, listed=listed)
    assert b"Quillon" in copy.read_bytes()

    done = restore(path, copy, Actor(initials="J", now=LATER.now))

    assert done.erased_again == 1
    assert not [word for word in WORDS if word.encode() in path.read_bytes()]
    with contextlib.closing(sqlite3.connect(path)) as raw:
        assert list(audit(raw)) == []
    assert restore(path, copy, by("J", minutes=9)).erased_again == 1


@pytest.mark.sqlite_file
def test_an_export_from_before_cannot_either(tmp_path: Path) -> None:
    """Taken in beside the list, the customer is erased in the new file too."""
    path, copy = erased_since(tmp_path, listed=True)
    old = open_shop(copy)
    write_out(old, path.with_name("out.jsonl"))
    close_shop(old)

    lines, again = take_in(path.with_name("new.qb"), path.with_name("out.jsonl"), LATER)

    assert (lines > 0, again) == (True, 1)
    assert not [word for word in WORDS if word.encode() in path.with_name("new.qb").read_bytes()]


@pytest.mark.sqlite_file
def test_another_customer_of_the_same_number_is_not_erased(tmp_path: Path) -> None:
    """In a file in which the number went to somebody else the list names nobody."""
    path, _ = erased_since(tmp_path / "one", listed=True)
    other = small_shop(tmp_path / "two")
    kept = counter(other, name="Ms Verrin")
    copy_to(other, tmp_path / "two" / "copy.qb", NOW)
    close_shop(other)

    assert restore(path, tmp_path / "two" / "copy.qb", by("J", minutes=9)).erased_again == 0
    again = open_shop(path)
    assert look(again, NOW).boxes[0].customer.name == kept.customer.name
    close_shop(again)


@pytest.mark.sqlite_file
def test_the_list_goes_where_the_copies_go(shop: Shop, customer: Customer, tmp_path: Path) -> None:
    """A stick that outlives the machine knows who was erased, in figures that tell nobody who."""
    stick = tmp_path / "stick"
    stick.mkdir()
    text = seed_text("settings.toml").replace('second_folder = ""', f'second_folder = "{stick}"')
    take_settings(shop, by(), text)
    erasing.erase(shop, LATER, customer, "asked by letter")
    daily_copy(shop, LATER.now)

    beside = shop.path.with_name("test-erased.txt")
    assert (stick / "test-erased.txt").read_bytes() == beside.read_bytes()
    assert len(beside.read_text(encoding="ascii").split()) == 1
    assert beside.stat().st_mode & 0o077 == 0


def grown_old(shop: Shop) -> Path:
    """A copy with the customer's words that two years of later copies leave nothing but its year."""
    copy = copies_folder(shop.path) / "test-2026-11-09.qb"
    daily_copy(shop, NOW)
    later = [LATER.now.date() - timedelta(days=number) for number in range(1, 15)]
    later += [LATER.now.date() - timedelta(days=31 * number) for number in range(1, 14)]
    for day in later:
        copy.with_name(f"test-{day}.qb").write_bytes(b"a copy of another day; thinning looks at names alone")
    return copy


@pytest.mark.sqlite_file
def test_a_copy_that_stays_for_its_year_is_made_anew(shop: Shop, customer: Customer) -> None:
    """With the next copy the words are out of it: sound, with its sum, all else as it was; once is enough."""
    copy = grown_old(shop)
    erasing.erase(shop, LATER, customer, "asked by letter")
    assert b"Quillon" in copy.read_bytes()

    daily_copy(shop, LATER.now)

    assert not [word for word in WORDS if word.encode() in copy.read_bytes()]
    assert as_written(copy)
    assert copy.stat().st_mode & 0o077 == 0
    with contextlib.closing(sqlite3.connect(copy)) as raw:
        assert list(audit(raw)) == []
        assert raw.execute("SELECT count(*) FROM knife").fetchone() == (3,)
    assert forget_in_copies(shop.path, copy.parent, LATER.now) == ()
    close_shop(shop)
    assert restore(shop.path, copy, LATER).erased_again == 0


@pytest.mark.sqlite_file
def test_a_copy_that_stays_a_while_is_left_to_thinning(shop: Shop, customer: Customer) -> None:
    """What goes by itself within twelve months is not touched; nor is one that is damaged."""
    copy = daily_copy(shop, NOW)
    assert copy is not None
    erasing.erase(shop, LATER, customer, "asked by letter")
    before = copy.read_bytes()
    assert forget_in_copies(shop.path, copy.parent, LATER.now) == ()
    assert copy.read_bytes() == before

    grown_old(shop)
    copy.write_bytes(before[:-4096])
    assert forget_in_copies(shop.path, copy.parent, LATER.now) == ()
    assert copy.read_bytes() == before[:-4096]


@pytest.mark.sqlite_file
def test_a_kill_between_the_sum_and_the_copy_is_made_good(shop: Shop, customer: Customer) -> None:
    """A copy that has the sum of the one that was to take its place is made anew the next time."""
    copy = grown_old(shop)
    erasing.erase(shop, LATER, customer, "asked by letter")
    sum_file(copy).write_text("0" * 64, encoding="ascii")
    assert forget_in_copies(shop.path, copy.parent, LATER.now) == (copy,)
    assert as_written(copy)
