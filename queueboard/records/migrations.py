"""Numbered steps from one layout of the shop file to the next, in plain SQL."""

import sqlite3
from collections.abc import Iterator

from queueboard.records import schema_v1, schema_v2, schema_v3, schema_v4, schema_v5, schema_v6, schema_v7

STEPS: tuple[str, ...] = (
    schema_v1.SQL,
    schema_v2.SQL,
    schema_v3.SQL,
    schema_v4.SQL,
    schema_v5.SQL,
    schema_v6.SQL,
    schema_v7.SQL,
)
"""STEPS[n] leads from version n to n + 1; version 0 is an empty file. Their number is the newest layout this program
knows, and stands in the file as user_version."""


def statements(script: str) -> Iterator[str]:
    """The statements of a script one by one; executescript would end the transaction that is open."""
    begun = ""
    for piece in script.split(";"):
        begun += piece + ";"
        if sqlite3.complete_statement(begun):
            yield begun
            begun = ""
