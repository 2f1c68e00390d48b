"""The reading commands, the instant they are run at, and the schema their JSON is held against."""

import json
from collections.abc import Mapping
from datetime import datetime, timedelta
from pathlib import Path

from jsonschema import Draft202012Validator, FormatChecker

from tests.shop.place import NOW

SCHEMAS = json.loads((Path(__file__).parents[1] / "schemas" / "commands.json").read_text(encoding="utf-8"))
READING = ("day", "late", "labels", "boxes")


def clock() -> datetime:
    """The instant of every command here."""
    return NOW + timedelta(hours=1)


def valid(command: str, text: str) -> dict[str, object]:
    """The JSON a command printed, held against its schema."""
    facts: dict[str, object] = json.loads(text)
    valid_facts(command, facts)
    return facts


def valid_facts(command: str, facts: Mapping[str, object]) -> None:
    """Facts, held against the schema of a command."""
    schema = {**SCHEMAS, "$ref": f"#/$defs/{command}"}
    Draft202012Validator(schema, format_checker=FormatChecker()).validate(facts)
