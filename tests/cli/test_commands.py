"""The command line: what it prints, as text and as JSON, and what it says when something is wrong."""

import json
import unicodedata
from contextlib import suppress
from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND, REFUSED, USAGE, pasted
from queueboard.cli.running import build_parser
from queueboard.seedfiles import seed_text
from tests.cli.schema import READING, clock, valid
from tests.pictures import HOSTILE_NAMES

PUBLISHED = Path(__file__).parents[1] / "outside" / "values" / "text_hazards.json"
HAZARDS = [
    *(sample["text"] for sample in json.loads(PUBLISHED.read_text(encoding="utf-8"))["width"]),
    *("", " ", "\u3164", "²", "٣", "-", "1-", "-1", "1-²", "9" * 5000, "x" * 5000, "a\udcff", "\x1b[31m", "%s{0}"),
]


@pytest.mark.parametrize("command", READING)
def test_a_reading_command_prints_text(command: str, file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each reading command ends well, prints lines, and sends no sign that could command a terminal."""
    assert main([command, "--file", file], clock=clock) == FINE

    said = capsys.readouterr()
    assert said.out.endswith("\n")
    assert said.err == ""
    assert not [sign for sign in said.out if sign != "\n" and not sign.isprintable() and ord(sign) < 0xA0]


@pytest.mark.parametrize("command", READING)
def test_a_reading_command_prints_json_by_its_schema(
    command: str, file: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each reading command's JSON has exactly the keys that the schema documents."""
    assert main(["--file", file, command, "--json"], clock=clock) == FINE

    assert valid(command, capsys.readouterr().out)


def test_every_name_comes_out_of_json_as_it_was_typed(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Brackets, emoji, right-to-left letters and 300 characters survive the way through the file and JSON."""
    main(["boxes", "--json", "--file", file], clock=clock)

    boxes = json.loads(capsys.readouterr().out)["boxes"]
    assert {box["customer"]["name"] for box in boxes} == set(HOSTILE_NAMES)


@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_every_name_is_shown_literally(name: str, file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The lists and a box's own page show the name as it was typed."""
    main(["boxes", "--file", file], clock=clock)
    listed = capsys.readouterr().out
    number = next(
        line.split()[0] for line in listed.splitlines() if line.endswith(f"  {name}") and line.split()[0].isdigit()
    )
    main(["box", number, "--file", file], clock=clock)

    assert f"Box {number}, {name}: " in capsys.readouterr().out


def test_one_box_is_shown_by_number_or_tag(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A box's page is the same for its number and for a tag of it, and its JSON follows the schema."""
    numbers = [box["number"] for box in _boxes(file, capsys)]
    pages = []
    for asked in (str(numbers[0]), f"{numbers[0]}-1"):
        assert main(["box", asked, "--file", file], clock=clock) == FINE
        pages.append(capsys.readouterr().out)
    assert main(["box", str(numbers[0]), "--json", "--file", file], clock=clock) == FINE

    assert pages[0] == pages[1]
    assert f"{numbers[0]}-1" in pages[0]
    assert valid("box", capsys.readouterr().out)


def _boxes(file: str, capsys: pytest.CaptureFixture[str]) -> list[dict[str, object]]:
    main(["boxes", "--json", "--file", file], clock=clock)
    boxes: list[dict[str, object]] = json.loads(capsys.readouterr().out)["boxes"]
    return boxes


def test_a_box_that_is_not_open_is_said_so(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """An unknown number ends with the code for nothing found and one sentence."""
    assert main(["box", "99999", "--file", file], clock=clock) == NOTHING_FOUND

    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith("Box 99999 is not open.")


def test_finding_answers_with_a_sentence_to_read_aloud(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A name in any case finds its boxes; JSON holds the same boxes."""
    assert main(["find", "OLA", "--file", file], clock=clock) == FINE
    lines = capsys.readouterr().out.splitlines()
    assert main(["find", "ola", "--json", "--file", file], clock=clock) == FINE

    found = valid("find", capsys.readouterr().out)["boxes"]
    assert isinstance(found, list)
    assert [box["said"] for box in found] == lines
    assert len(lines) == 2


def test_finding_nothing_has_its_own_code(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What fits no box ends with the code for nothing found; JSON still says an empty list."""
    assert main(["find", "[nobody]", "--file", file], clock=clock) == NOTHING_FOUND
    assert "No box fits “[nobody]”." in capsys.readouterr().err
    assert main(["find", "nobody", "--json", "--file", file], clock=clock) == NOTHING_FOUND

    assert valid("find", capsys.readouterr().out)["boxes"] == []


@pytest.mark.parametrize("text", HAZARDS, ids=lambda text: ascii(text)[:40])
def test_finding_takes_any_text(text: str, file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Whatever is looked for, the answer is boxes, one sentence, or a refusal, and nothing commands the terminal."""
    for more in ([], ["--json"]):
        assert main(["find", "--file", file, *more, "--", text], clock=clock) in {FINE, NOTHING_FOUND, USAGE}

        said = capsys.readouterr()
        assert said.out or said.err
        assert not [sign for sign in said.out + said.err if sign != "\n" and unicodedata.category(sign) in {"Cc", "Cs"}]


@pytest.mark.parametrize("more", [[], ["--json"]])
def test_a_tag_that_no_knife_has_is_not_found(more: list[str], file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A tag of an open box without such a knife ends like a box that is not open: one sentence and its own code."""
    assert main(["box", "100-999", *more, "--file", file], clock=clock) == NOTHING_FOUND

    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == "There is no knife 100-999; box 100 has 3.\n"


def test_an_empty_shop_says_what_to_do_next(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The day of a shop without boxes says how to receive one."""
    assert main(["day", "--file", empty], clock=clock) == FINE

    assert "No box is open. Receive one" in capsys.readouterr().out


TROUBLE = [
    (["day", "--file", "{folder}/none.qb"], REFUSED, "There is no shop file"),
    (["day", "--file", "{folder}"], REFUSED, "is a folder"),
    (["day", "--file", "{foreign}"], REFUSED, "is not a shop file"),
    pytest.param(["start", "--file", "{file}"], REFUSED, "is there already", marks=pytest.mark.sqlite_file),
    pytest.param(["start", "--file", "{file}"], REFUSED, "has a shop in it already", marks=pytest.mark.server),
    (["start", "--file", "{folder}/new.qb", "--settings", "{folder}/none.toml"], REFUSED, "cannot be read"),
    (["start", "--file", "{folder}/new.qb", "--settings", "{binary}"], REFUSED, "no UTF-8 text"),
    pytest.param(
        ["start", "--file", "{folder}/new.qb", "--settings", "{foreign}"],
        REFUSED,
        "line",
        marks=pytest.mark.sqlite_file,
    ),
    (["settings", "--take", "{foreign}", "--as", "J", "--file", "{file}"], REFUSED, "line"),
    (["settings", "--take", "{foreign}", "--file", "{file}"], USAGE, "who acts"),
    (["settings", "--take", "{foreign}", "--as", "JJJJJJJJJ", "--file", "{file}"], USAGE, "initials"),
    (["backup", "{file}", "--file", "{file}"], REFUSED, "is there already"),
    (["backup", "{folder}/no/b.qb", "--file", "{file}"], REFUSED, "no folder"),
    (["box", "four", "--file", "{file}"], USAGE, "is no tag"),
    (["find", "a\ud800", "--file", "{file}"], USAGE, "half of a character"),
    (["find", "", "--file", "{file}"], USAGE, "nothing to look for"),
    (["find", "  ", "\u3164", "--json", "--file", "{file}"], USAGE, "nothing to look for"),
    (["find", "\x1b[31mtallis", "--file", "{file}"], USAGE, "control character (U+001B)"),
    (["find", "tal\x07lis", "--json", "--file", "{file}"], USAGE, "control character (U+0007)"),
    (["day", "--file", "/proc/self/mem"], REFUSED, "/proc/self/mem cannot be read: "),
    (["settings", "--take", "/proc/self/mem", "--as", "J", "--file", "{file}"], REFUSED, "/proc/self/mem cannot"),
    (["demo", "--file", "{folder}/new.qb", "--date", "2026-02-30"], USAGE, "There is no 30.2.2026 in the calendar"),
    (["--file", "{file}"], USAGE, "needs a terminal"),
    (["demo"], USAGE, "needs a terminal"),
]


@pytest.mark.parametrize(("arguments", "code", "says"), TROUBLE)
def test_trouble_is_one_sentence_and_a_code(
    arguments: list[str], code: int, says: str, empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whatever is wrong, nothing goes to standard output, one sentence to standard error, and the code tells which."""
    foreign, binary = tmp_path / "foreign.txt", tmp_path / "binary.toml"
    foreign.write_text("this is = = no toml\n" * 60, encoding="utf-8")
    binary.write_bytes(b"\xff\xfe\x00")
    names = {"folder": tmp_path, "foreign": foreign, "binary": binary, "file": empty}

    assert main([argument.format(**names) for argument in arguments], clock=clock) == code

    said = capsys.readouterr()
    assert said.out == ""
    assert says in said.err
    assert "Traceback" not in said.err
    assert not (tmp_path / "new.qb").exists()


def test_a_mistyped_command_cannot_command_the_terminal(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What was typed is quoted without its control characters, in usage errors and in sentences."""
    mistyped = (
        ["day", "--file", file, "\x1b]0;t\x07"],
        ["box", "\x1b[31m", "--file", file],
        ["day", "--file", "\x9b2J"],
    )
    for arguments in mistyped:
        with suppress(SystemExit):
            main(arguments)

    said = capsys.readouterr().err
    assert said
    assert not [sign for sign in said if not sign.isprintable() and sign != "\n"]


@pytest.mark.parametrize("arguments", [["--nonsense"], ["nonsense"], ["box"]])
def test_a_mistyped_command_explains_itself(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """Unknown options, commands and days end with the code for mistyped and the usage."""
    with pytest.raises(SystemExit) as left:
        main(arguments)

    assert left.value.code == USAGE
    assert "usage: queueboard" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["", "  "])
@pytest.mark.parametrize("arguments", [["day", "--file"], ["backup"], ["start", "--settings"], ["settings", "--take"]])
def test_a_file_without_a_name_is_said(arguments: list[str], name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """An empty name, as of a variable that was never set, is mistyped and no folder or file of that name."""
    with pytest.raises(SystemExit) as left:
        main([*arguments, name])

    assert left.value.code == USAGE
    assert "the name of the file is empty" in capsys.readouterr().err


def test_start_says_whose_numbers_it_began_with(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Three lines: where the file is, what the starter numbers say, and the two commands to make them one's own."""
    file = str(tmp_path / "shop.qb")
    assert main(["start", "--file", file], clock=clock) == FINE

    where, numbers, yours = capsys.readouterr().out.splitlines()
    assert pasted(Path(file)) in where
    assert "Fernlea Edge, America/New_York, USD, inches, US holidays" in numbers
    assert "settings > mine.toml" in yours
    assert "settings --take mine.toml" in yours


def test_a_shop_is_started_and_its_settings_come_back(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Start asks nothing, and settings prints the starter text; taking it in again is accepted."""
    file, text = str(tmp_path / "shop.qb"), tmp_path / "mine.toml"
    assert main(["start", "--file", file], clock=clock) == FINE
    capsys.readouterr()
    assert main(["settings", "--file", file], clock=clock) == FINE
    printed = capsys.readouterr().out
    text.write_text(printed, encoding="utf-8")

    assert printed == seed_text("settings.toml")
    assert main(["settings", "--take", str(text), "--as", "MB", "--file", file], clock=clock) == FINE
    assert "in force" in capsys.readouterr().out


def test_a_doubtful_belt_is_asked_about_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A number without its scale is named when its set is new; the same set taken in again is silent."""
    file, text = str(tmp_path / "shop.qb"), tmp_path / "mine.toml"
    mine = seed_text("settings.toml").replace('{ label = "P400", grit_um = 35.0 }', '{ label = "400", grit_um = 35.0 }')
    text.write_text(mine, encoding="utf-8")
    assert main(["start", "--file", file, "--as", "MB"], clock=clock) == FINE
    assert "Look at this belt" not in capsys.readouterr().out

    assert main(["settings", "--take", str(text), "--as", "MB", "--file", file], clock=clock) == FINE
    (asked,) = capsys.readouterr().out.splitlines()[1:]
    assert asked.startswith("Look at this belt: process plain, belt 2, 400: may be P400 (35 um) or CAMI 400 (23 um)")
    assert main(["settings", "--take", str(text), "--as", "MB", "--file", file], clock=clock) == FINE
    assert "Look at this belt" not in capsys.readouterr().out


def test_the_file_and_initials_may_come_from_the_environment(
    empty: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """QUEUEBOARD_FILE names the shop's file, and --file outranks it."""
    monkeypatch.setenv("QUEUEBOARD_FILE", empty)
    assert main(["boxes"], clock=clock) == FINE
    assert main(["boxes", "--file", str(tmp_path / "none.qb")], clock=clock) == REFUSED

    assert "none.qb" in capsys.readouterr().err


@pytest.mark.sqlite_file
def test_a_backup_is_a_shop_file_of_its_own(file: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The copy opens and lists the same boxes as its original."""
    copy = str(tmp_path / "copy.qb")
    assert main(["backup", copy, "--file", file], clock=clock) == FINE
    capsys.readouterr()

    assert _boxes(copy, capsys) == _boxes(file, capsys)


def test_fixing_the_order_needs_somebody_who_acts(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The order of the day is fixed for somebody with initials, and the same list is printed."""
    assert main(["day", "--fix", "--file", file], clock=clock) == USAGE
    assert main(["day", "--fix", "--as", "MB", "--file", file], clock=clock) == FINE
    fixed = capsys.readouterr().out
    assert main(["day", "--file", file], clock=clock) == FINE

    assert capsys.readouterr().out == fixed


def test_every_command_says_what_it_does() -> None:
    """The help of the whole names each command with a sentence, and the exit codes."""
    text = build_parser().format_help()

    for command in ("start", "demo", "day", "late", "labels", "boxes", "box", "find", "settings", "backup"):
        assert f"    {command} " in text
    assert "3 nothing found" in text
