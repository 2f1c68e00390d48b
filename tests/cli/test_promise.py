"""The promise command: the earliest day, yes or no to a day, its codes and its JSON."""

from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NO, REFUSED, USAGE
from queueboard.seedfiles import seed_text
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import close_shop, open_shop
from tests.cli.schema import clock, valid
from tests.kept import kept
from tests.pictures import HOSTILE_NAMES
from tests.shop.place import by


def test_the_earliest_day_is_told_with_its_sum(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """In an empty shop five knives are ready the same day; the text shows the sum and the room."""
    assert main(["promise", "4 chef 8, 1 bread", "--file", empty], clock=clock) == FINE

    said = capsys.readouterr().out
    assert said == kept("paper-promise", said)
    assert "5 knives, pick-up" in said
    assert "earliest: ready by Mon 9 Nov" in said


def test_knives_may_stand_in_one_text_or_in_several(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Commas and arguments part lines alike, and a comma within a length is none."""
    answers = []
    for knives in (["4 chef 8,5, bread 9"], ["4 chef 8,5", "bread 9"], ["4 chef 8,5,bread 9"]):
        assert main(["promise", *knives, "--file", empty], clock=clock) == FINE
        answers.append(capsys.readouterr().out)

    assert len(set(answers)) == 1
    assert answers[0].startswith("5 knives")


@pytest.mark.parametrize(
    ("asked", "code", "says"),
    [
        (["--on", "fri"], FINE, "Fri 13 Nov: yes"),
        (["--on", "fri", "--at", "16:00"], FINE, "Fri 13 Nov 16:00: yes"),
        (["--by-mail", "--on", "today"], NO, "Mon 9 Nov: no"),
        (["--by-mail", "--carrier-days", "0", "--on", "2026-11-09"], FINE, "Mon 9 Nov: yes"),
        (["--on", "25 nov"], FINE, "Wed 25 Nov: yes"),
        (["--pick-up", "--on", "today", "--at", "09:00"], NO, "Mon 9 Nov 09:00: no"),
    ],
)
def test_a_day_asked_about_gets_yes_or_no(
    asked: list[str], code: int, says: str, empty: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """The last line answers, and so does the exit code."""
    assert main(["promise", "chef", *asked, "--file", empty], clock=clock) == code
    assert capsys.readouterr().out.splitlines()[-1].startswith(says)


def test_a_no_names_whom_it_would_make_late(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Text and JSON name the boxes and their customers literally; the code is that of a no."""
    arguments = ["promise", "60 chef", "--on", "tue", "--file", file]
    assert main(arguments, clock=clock) == NO
    said = capsys.readouterr().out
    assert main([*arguments, "--json"], clock=clock) == NO
    facts = valid("promise", capsys.readouterr().out)

    asked = facts["asked"]
    assert isinstance(asked, dict)
    assert not asked["yes"]
    late = asked["would_be_late"]
    assert {one["customer"] for one in late} <= set(HOSTILE_NAMES)
    assert all(f"box {one['number']}" in said for one in late[:3])
    assert not [sign for sign in said if sign != "\n" and not sign.isprintable() and ord(sign) < 0xA0]


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (["--on", "25 dec"], "Fri 25 Dec: no, the shop is shut: Christmas Day; it opens again Sat 26 Dec"),
        (["--on", "26 nov", "--at", "11:00"], "Thu 26 Nov 11:00: no, the shop is shut: Thanksgiving Day"),
        (["--on", "15 nov"], "Sun 15 Nov: no, the shop is shut: closed on Sundays; it opens again Mon 16 Nov"),
        (["--on", "2 dec"], "Wed 2 Dec: no, the shop is shut: belts are changed; it opens again Thu 3 Dec"),
    ],
)
def test_a_day_on_which_the_shop_is_shut_is_a_no(
    asked: list[str], says: str, empty: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nobody can fetch anything at a closed door: the reason and the next open day are named, in JSON too."""
    shop = open_shop(Path(empty))
    shut = '\n[[closures]]\nfirst = 2026-12-01\nlast = 2026-12-02\nreason = "belts are changed"\n'
    take_settings(shop, by(), seed_text("settings.toml") + shut)
    close_shop(shop)
    arguments = ["promise", "2 chef", *asked, "--file", empty]

    assert main(arguments, clock=clock) == NO
    assert capsys.readouterr().out.splitlines()[-1].startswith(says)

    assert main([*arguments, "--json"], clock=clock) == NO
    answer = valid("promise", capsys.readouterr().out)["asked"]
    assert isinstance(answer, dict)
    assert answer["why"] == "the shop is shut"
    assert answer["opens"] in {"2026-12-26", "2026-11-27", "2026-11-28", "2026-11-16", "2026-12-03"}


def test_a_parcel_may_be_in_hand_while_the_shop_is_shut(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What is in hand by a day left before it: the shop's own door has nothing to do with it."""
    assert main(["promise", "2 chef", "--by-mail", "--on", "25 dec", "--file", empty], clock=clock) == FINE
    assert capsys.readouterr().out.splitlines()[-1].startswith("Fri 25 Dec: yes")


def test_what_is_never_free_is_a_no_of_its_own(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """More than the days planned ahead can bear: no day is made up, and the code says no."""
    assert main(["promise", "999 chef big chips", "--json", "--file", empty], clock=clock) == NO

    assert valid("promise", capsys.readouterr().out)["earliest"] is None


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (["cheff"], "Do you mean “chef”?"),
        ([""], "kind of knife is missing"),
        (["600 chef", "600 bread"], "at most 999"),
        (["chef", "--on", "31.2"], "There is no 31.2"),
        (["chef", "--on", "2026-11-08"], "Sun 8 Nov is past: today is Mon 9 Nov."),
        (["chef", "--by-mail", "--on", "8 nov 2026"], "Sun 8 Nov is past"),
        (["chef", "--on", "25 decc"], "Type it like 2026-11-27, 27.11, 27 nov, fri, today, tomorrow or +3."),
        (["-3 chef"], "whole number of 1 or more"),
        (["1.5 chef"], "whole number of 1 or more"),
        (["chef", "--on", "fri", "--at", "4"], "two ways"),
        (["chef", "--at", "16:00"], "goes with --on"),
        (["chef", "--by-mail", "--on", "fri", "--at", "16:00"], "carrier's business"),
        (["chef", "--carrier-days", "2"], "go with --by-mail"),
        (["chef", "--by-mail", "--carrier-days", "61"], "outside 0 to 60"),
        (["chef", "--by-mail", "--carrier-days", "-1"], "“-1” is not a whole number"),
        (["chef", "--by-mail", "--carrier-days", "1.5"], "“1.5” is not a whole number"),
        (["chef", "--by-mail", "--carrier-days", "٣"], "“٣” is not a whole number"),
    ],
)
def test_what_does_not_hold_together_is_asked_back(
    asked: list[str], says: str, empty: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A sentence on standard error, nothing on standard output, and the code for mistyped."""
    assert main(["promise", *asked, "--file", empty], clock=clock) == USAGE

    said = capsys.readouterr()
    assert said.out == ""
    assert says in said.err


def test_a_shop_that_stays_shut_tells_no_day(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Without bench time in the days planned ahead nothing can be told, and that is said."""
    shut = '\n[[closures]]\nfirst = 2026-11-01\nlast = 2027-10-31\nreason = "away"\n'
    shop = open_shop(Path(empty))
    take_settings(shop, by(), seed_text("settings.toml") + shut)
    close_shop(shop)

    assert main(["promise", "chef", "--file", empty], clock=clock) == REFUSED
    assert "no bench time" in capsys.readouterr().err
