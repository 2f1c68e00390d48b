"""What people typed is never read as markup, so no place of ours may hand it to a parser."""

import ast
from collections.abc import Iterator

from tests.house.tree import Source, called_name, sources

PARSERS = {
    "Static",
    "Label",
    "Button",
    "Checkbox",
    "RadioButton",
    "Collapsible",
    "Tab",
    "TabPane",
    "Option",
    "Placeholder",
}
"""Widgets that read markup in the first text they are given."""

LITERAL = {"Content", "Text", "assemble"}
"""Calls whose answer shows text as it stands."""

TITLES = {"border_title", "border_subtitle", "tooltip"}
"""Attributes that read markup in a plain string."""


def is_literal(node: ast.expr) -> bool:
    """True when this is our own text without brackets, or is wrapped so that it shows as it stands."""
    match node:
        case ast.Constant(value=str(text)):
            return "[" not in text
        case ast.Constant():
            return True
        case ast.Call(func=ast.Attribute(value=ast.Call() as glue, attr="join")):
            return is_literal(glue)
        case ast.Call():
            return called_name(node) in LITERAL
        case ast.IfExp():
            return is_literal(node.body) and is_literal(node.orelse)
        case _:
            return False


def says_no_markup(call: ast.Call) -> bool:
    """True when the call says markup=False."""
    return any(
        word.arg == "markup" and isinstance(word.value, ast.Constant) and word.value.value is False
        for word in call.keywords
    )


def unsafe(node: ast.AST) -> str:
    """What is wrong with this piece of code, or nothing."""
    match node:
        case ast.Call() if called_name(node) == "notify" and not says_no_markup(node):
            return "notify without markup=False"
        case ast.Call(args=[first, *_]) if called_name(node) in PARSERS and not is_literal(first):
            return "" if says_no_markup(node) else f"{called_name(node)} reads markup in what it is given"
        case ast.Call(args=[first, *_]) if called_name(node) in {"from_markup", "markup"}:
            return "" if isinstance(first, ast.Constant) else "markup that is put together at run time"
        case ast.Assign(targets=[ast.Attribute(attr=attribute)], value=value) if attribute in TITLES:
            return "" if is_literal(value) else f"{attribute} reads markup in a plain string"
        case _:
            return ""


def offences(source: Source) -> Iterator[str]:
    """A line for each place in a file where typed text could be read as markup."""
    for node in ast.walk(source.tree):
        trouble = unsafe(node)
        if trouble:
            yield f"{source.where}:{getattr(node, 'lineno', 0)} {trouble}"


def test_no_typed_text_meets_a_parser_of_markup() -> None:
    """Every text on the board is literal: wrapped in Content or Text, or given with markup=False."""
    offenders = [line for source in sources("queueboard/board", "queueboard/papers") for line in offences(source)]

    assert not offenders, "\n".join(offenders)


def test_the_search_finds_what_it_looks_for() -> None:
    """A widget, a notice, a title and markup put together at run time are each found once."""
    code = 'Static(name)\nself.notify(name)\nself.border_title = name\nContent.from_markup(f"[b]{name}[/b]")\n'
    code += 'Static("plain")\nStatic(Content(name))\nLabel(name, markup=False)\nself.border_title = Content(name)\n'

    found = [node for node in ast.walk(ast.parse(code)) if unsafe(node)]

    assert [getattr(node, "lineno", 0) for node in found] == [3, 1, 2, 4]
