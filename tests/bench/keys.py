"""Random keys at the board: python -m tests.bench.keys [SEQUENCES] [SEED].

Keys of every kind, words and pasted text come in bursts, as quick hands and slow lines send them. Nothing may end in a
traceback; behind each sequence the board must still answer (Esc leads home, and now and then its keys open), what the
shop promises must hold, and at the end the file must be sound against its own history. One app stands for many
sequences, so that what piles up is tried too; where a key left it, another is opened. In the control one key of the
board fails, and that must be heard.
"""

import asyncio
import random
from contextlib import closing
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from textual.events import Key, Paste
from textual.keys import _character_to_key
from textual.pilot import Pilot

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.help import HelpScreen
from queueboard.records.auditing import audit
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.undoing import steps
from tests.bench.machine import asked, heading
from tests.board.host import LARGE, SMALL
from tests.shop.place import NOW, counter, parcel, small_shop
from tests.shop.random_day import hold_laws

KEYS_EACH = 24
NAMED = (
    *(
        "enter",
        "escape",
        "tab",
        "shift+tab",
        "backspace",
        "delete",
        "space",
        "up",
        "down",
        "left",
        "right",
        "home",
        "end",
    ),
    *("pageup", "pagedown", "f2", "f3", "f4", "f5", "f6", "ctrl+t", "ctrl+c"),
)
SIGNS = "+-*/.,?$!"
LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIKLMNOPRSTWXZ"
WORDS = ("Oake", "101-1", "4 chef 8 dull, black ! wish", "12.50", "[red]x[/]", "13 nov", "900 g", "2", "M\N{SKULL}")
TAGS = ("100", "101", "100-2", "101-1", "102")
EACH_SHOP = 25
"""Sequences after which a new shop begins."""

ANSWERS_SECONDS = 60
"""A board that has not come to rest by then answers no more; a busy machine is far from it."""


class FailingApp(QueueboardApp):
    """The control: the key that changes the appearance fails."""

    def action_turn_theme(self) -> None:
        """Fail as a mistake of the program would."""
        raise ZeroDivisionError("planted")


@dataclass
class Tally:
    """What became of the sequences."""

    sequences: int = 0
    keys: int = 0
    done: int = 0
    """Steps that the keys stored."""
    left: int = 0
    """Sequences in which a key left the board."""
    troubles: int = 0
    """Tracebacks, boards that answered no more."""


def burst(draw: random.Random) -> list[str]:
    """A few keys that come at once: one of a kind, or a word with Enter behind it."""
    kind = draw.random()
    if kind < 0.15:
        return [*draw.choice(WORDS), "enter"]
    if kind < 0.2:
        return ["paste " + draw.choice(WORDS)]
    if kind < 0.35:
        return [*draw.choice(TAGS), *draw.choice(("+", "++", "*", "/", "-"))]
    of = draw.choice((NAMED, NAMED, SIGNS, LETTERS, LETTERS, "0123456789"))
    return [draw.choice(of) for _ in range(draw.choice((1, 1, 1, 2, 3)))]


def post(app: QueueboardApp, key: str) -> None:
    """Send a key as the terminal does, without waiting for what becomes of it."""
    if key.startswith("paste "):
        app.post_message(Paste(key.removeprefix("paste ")))
    elif len(key) == 1:
        app.post_message(Key(_character_to_key(key), key))
    else:
        app.post_message(Key(key, {"enter": "\r", "space": " ", "tab": "\t"}.get(key)))


async def at_rest(app: QueueboardApp, pilot: Pilot[int]) -> None:
    """Wait until every key was heard, or the board is left."""
    async with asyncio.timeout(ANSWERS_SECONDS):
        while not app.key_turns.at_rest and not app._exit:
            await pilot.pause()
        if not app._exit:
            await pilot.pause()


async def home(app: QueueboardApp, pilot: Pilot[int]) -> bool:
    """True when Esc leads to the board from wherever the keys have led."""
    for _ in range(12):
        if isinstance(app.screen, BoardScreen):
            return True
        post(app, "escape")
        await at_rest(app, pilot)
    return False


async def opens_help(app: QueueboardApp, pilot: Pilot[int]) -> bool:
    """True when the keys of the board open and close."""
    post(app, "?")
    await at_rest(app, pilot)
    opened = isinstance(app.screen, HelpScreen)
    return opened and await home(app, pilot)


async def press(
    shop: Shop, draw: random.Random, wanted: int, keys_each: int, tally: Tally, board: type[QueueboardApp]
) -> None:
    """One app, for so many sequences or until a key leaves it; each is five minutes later."""

    def clock() -> int:
        return 5 * tally.sequences

    app = board(Desk(shop, "J", lambda: NOW + timedelta(minutes=clock())))
    async with app.run_test(size=draw.choice((SMALL, SMALL, LARGE))) as pilot:
        await at_rest(app, pilot)
        for _ in range(wanted):
            sent = 0
            while sent < keys_each and not app._exit:
                keys = burst(draw)
                sent += len(keys)
                for key in keys:
                    post(app, key)
                await at_rest(app, pilot)
            tally.sequences += 1
            tally.keys += sent
            if app._exit:
                tally.left += 1
                break
            tally.troubles += not await home(app, pilot)
            if tally.sequences % 5 == 0:
                tally.troubles += not await opens_help(app, pilot)
            hold_laws(shop, look(shop, NOW + timedelta(minutes=clock())))
    tally.troubles += app.failure is not None
    if app.failure is not None:
        raise app.failure


async def press_at_random(
    wanted: int, seed: int, keys_each: int = KEYS_EACH, board: type[QueueboardApp] = QueueboardApp
) -> Tally:
    """So many sequences, drawn from a seed."""
    draw, tally = random.Random(seed), Tally()  # noqa: S311  # no secret hangs on it
    while tally.sequences < wanted:
        with TemporaryDirectory() as folder, closing(small_shop(Path(folder))) as shop:
            parcel(shop)
            counter(shop)
            until = min(wanted, tally.sequences + EACH_SHOP)
            while tally.sequences < until:
                await press(shop, draw, until - tally.sequences, keys_each, tally, board)
            tally.done += len(steps(shop, "J", 400))
            assert list(audit(shop.database.raw())) == []
    return tally


def is_heard(seed: int) -> bool:
    """True when the key that fails is heard, within as many sequences as one shop stands for."""
    try:
        asyncio.run(press_at_random(EACH_SHOP, seed, board=FailingApp))
    except ZeroDivisionError:
        return True
    return False


def main() -> None:
    """Print the table."""
    wanted, seed = asked(5000, 7)
    print(heading("tests.bench.keys", seed))
    tally = asyncio.run(press_at_random(wanted, seed))
    for says, count in (
        ("sequences of random keys", tally.sequences),
        ("keys", tally.keys),
        ("steps that they stored", tally.done),
        ("times that a key left the board, and it was opened again", tally.left),
        ("tracebacks, laws broken, boards that answered no more", tally.troubles),
    ):
        print(f"{says:<58} {count:>8}")
    print(f"{'control: a key that fails is heard':<58} {'yes' if is_heard(seed) else 'NO':>8}")


if __name__ == "__main__":
    main()
