"""Numbered steps from one layout of the shop file to the next, in plain SQL."""

from queueboard.records import schema_v1, schema_v2, schema_v3, schema_v4

STEPS: tuple[str, ...] = (schema_v1.SQL, schema_v2.SQL, schema_v3.SQL, schema_v4.SQL)
"""STEPS[n] leads from version n to n + 1; version 0 is an empty file. Their number is the newest layout this program
knows, and stands in the file as user_version."""
