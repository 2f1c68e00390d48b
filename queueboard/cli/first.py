"""The first start of all: no shop file is there yet, so its numbers are asked for, and then it is made."""

import argparse
import os
import zoneinfo
from contextlib import suppress
from importlib.resources import files
from pathlib import Path

from queueboard.cli.common import NOBODY, Clock, initials_of, pasted, say
from queueboard.seedfiles import seed_text
from queueboard.shop.starting import new_shop
from queueboard.values.actor import Actor

FIRST_BOX = "The shop is made. r takes in the first box, 0 on the pad; N has its numbers."


class _LeftError(Exception):
    """The person left, so that the file that was being made is to go."""


def begins_new(args: argparse.Namespace, path: Path) -> bool:
    """True when a new shop may begin at a path where nothing lies.

    A file that was named, in a folder that is not there, is a stick that is not in or a name typed wrong: it must not
    begin as a new shop.
    """
    named = args.file is not None or bool(os.environ.get("QUEUEBOARD_FILE"))
    return not named or path.parent.is_dir()


def first_numbers(args: argparse.Namespace, path: Path, clock: Clock) -> tuple[int, str]:
    """Ask for the shop's first numbers and make its file; the exit code, and the initials, empty when it was left."""
    from queueboard.board.run import ask_for_numbers

    code, initials = 0, ""
    with suppress(_LeftError), new_shop(path, Actor(initials=NOBODY, now=clock()), seed_text("settings.toml")) as shop:
        place = place_here(zone_here())
        code, initials = ask_for_numbers(shop, initials_of(args), clock, place, no_mouse=args.no_mouse)
        if not initials:
            raise _LeftError
    if not initials and not code:
        say(f"No shop was made; {pasted(path)} is not there.\n")
    return code, initials


def zone_here() -> str:
    """The time zone this machine is set to, by its name in the IANA list; empty where it does not say."""
    told = os.environ.get("TZ", "").lstrip(":")
    if not told:
        with suppress(OSError):
            told = f"{Path('/etc/localtime').readlink()}".rpartition("zoneinfo/")[2]
    return told if told in zoneinfo.available_timezones() else ""


def place_here(zone: str) -> tuple[str, str]:
    """The time zone, and the country it belongs to by zone.tab of the IANA time zone data; each empty if not known."""
    beside = (Path(folder) / "zone.tab" for folder in zoneinfo.TZPATH)
    for table in (*beside, files("tzdata") / "zoneinfo" / "zone.tab"):
        if table.is_file():
            rows = (line.split("\t") for line in table.read_text(encoding="utf-8").splitlines() if line[:1] != "#")
            return zone, next((row[0] for row in rows if row[2] == zone), "")
    return zone, ""
