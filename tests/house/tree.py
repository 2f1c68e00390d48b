"""The project's own source, parsed once, for the tests that read it."""

import ast
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "queueboard"

PURE_ROOMS = (
    "values",
    "settings",
    "figures",
    "calendar",
    "planning",
    "parcels",
    "intake",
    "phrases",
    "clean",
    "words",
    "errors",
)
"""Rooms that know neither clock, database nor screen, and whose types hold without exception."""

Definition = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef
Function = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One file of ours."""

    path: Path
    text: str

    @property
    def tree(self) -> ast.Module:
        """What the text means, read when it is first asked for."""
        return _tree(self.text)

    @property
    def where(self) -> str:
        """The path as a person types it from the top of the project."""
        return self.path.relative_to(ROOT).as_posix()

    @property
    def room(self) -> str:
        """The room of the package it lies in: board, shop, words; tests and seed are rooms too."""
        first, *rest = self.path.relative_to(ROOT).parts
        return rest[0].removesuffix(".py") if first == "queueboard" else first

    def definitions(self) -> tuple[tuple[str, Definition], ...]:
        """Every class and function with its dotted name, outer ones first."""
        return _defined(self.text)


@cache
def _defined(text: str) -> tuple[tuple[str, Definition], ...]:
    return tuple(_definitions(_tree(text).body, ""))


def _definitions(body: Iterable[ast.AST], prefix: str) -> Iterator[tuple[str, Definition]]:
    """Those among some statements and in what these hold; no expression, which most of a tree is, holds one."""
    for node in body:
        if isinstance(node, Definition):
            name = f"{prefix}{node.name}"
            yield name, node
            yield from _definitions(node.body, f"{name}.")
        else:
            for inside in ("body", "orelse", "finalbody", "handlers", "cases"):
                yield from _definitions(getattr(node, inside, ()), prefix)


@cache
def sources(*folders: str) -> tuple[Source, ...]:
    """The Python files under these folders of the project, in order of their path."""
    paths = sorted(path for folder in folders for path in (ROOT / folder).rglob("*.py"))
    return tuple(Source(path=path, text=path.read_text(encoding="utf-8")) for path in paths)


@cache
def _tree(text: str) -> ast.Module:
    """Once for all tests, whichever folders they ask for."""
    return ast.parse(text)


def called_name(call: ast.Call) -> str:
    """The last word of what is called: Static for Static(...), notify for self.app.notify(...)."""
    match call.func:
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return name
        case _:
            return ""


def lines_of(node: Definition) -> int:
    """Lines from the first decorator to the last line."""
    first = min([node.lineno, *(decorator.lineno for decorator in node.decorator_list)])
    return (node.end_lineno or node.lineno) - first + 1
