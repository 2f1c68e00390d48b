"""What is public says what it means; what is tested says what it promises."""

import ast
import re
from collections.abc import Iterator

from tests.house.tree import Definition, Function, Source, called_name, sources

TEXTUAL_HOOKS = re.compile(
    r"compose|render|render_\w+|show|on_\w+|watch_\w+|compute_\w+|validate_\w+|action_\w+|check_action|notify_style_update"
    r"|get_content_height|get_content_width|get_system_commands|get_css_variables|clear"
)
"""Names that Textual gives its meaning to; an action's sentence stands in its key binding, show's in ShopScreen."""

PEEWEE_HOOKS = {"Meta", "db_value", "python_value", "rollback"}
"""Names that peewee gives its meaning to."""


def needs_a_docstring(source: Source, name: str, node: Definition) -> bool:
    """True for a public class or function that is not somebody else's hook or hidden inside a function."""
    words = name.split(".")
    if any(word.startswith("_") for word in words):
        return False
    if source.room == "board" and isinstance(node, Function) and TEXTUAL_HOOKS.fullmatch(words[-1]):
        return False
    return not (source.room == "records" and words[-1] in PEEWEE_HOOKS)


def inside_functions(source: Source) -> set[Definition]:
    """Definitions that live inside a function and are nobody else's business."""
    outer = [node for _, node in source.definitions() if isinstance(node, Function)]
    return {child for node in outer for child in ast.walk(node) if isinstance(child, Definition) and child is not node}


def classes() -> dict[str, ast.ClassDef]:
    """Every class of the package by its name."""
    every = (node for source in sources("queueboard") for _, node in source.definitions())
    return {node.name: node for node in every if isinstance(node, ast.ClassDef)}


def said_above(cls: ast.ClassDef, method: str, known: dict[str, ast.ClassDef]) -> bool:
    """True when a class of ours that this one builds on says what the method means."""
    bases = [base.value if isinstance(base, ast.Subscript) else base for base in cls.bases]
    ours = [known[base.id] for base in bases if isinstance(base, ast.Name) and base.id in known]
    return any(
        said_above(base, method, known)
        or any(isinstance(node, Function) and node.name == method and ast.get_docstring(node) for node in base.body)
        for base in ours
    )


def unsaid(source: Source, known: dict[str, ast.ClassDef]) -> Iterator[str]:
    """A line for everything public without a docstring, its own or that of the class it builds on."""
    if not ast.get_docstring(source.tree):
        yield f"{source.where}: the file says nothing"
    hidden = inside_functions(source)
    for name, node in source.definitions():
        if node in hidden or ast.get_docstring(node) or not needs_a_docstring(source, name, node):
            continue
        owner, _, method = name.rpartition(".")
        if not (owner in known and said_above(known[owner], method, known)):
            yield f"{source.where}:{node.lineno} {name}"


def promises_of(source: Source) -> Iterator[tuple[str, Function]]:
    """The tests in a file."""
    for name, node in source.definitions():
        if isinstance(node, Function) and node.name.startswith("test_"):
            yield f"{source.where}:{node.lineno} {name}", node


def looks(node: ast.AST) -> bool:
    """True when something in here can fail a test by what it sees."""
    return any(
        isinstance(child, ast.Assert) or (isinstance(child, ast.Call) and called_name(child) in {"raises", "fail"})
        for child in ast.walk(node)
    )


def test_everything_public_says_what_it_means() -> None:
    """Every module, public class and public function of the package has a docstring."""
    known = classes()

    offenders = [line for source in sources("queueboard") for line in unsaid(source, known)]

    assert not offenders, "\n".join(offenders)


def test_every_test_is_one_sentence() -> None:
    """Every test's docstring is one sentence that says a promise; a second paragraph may name its source."""
    offenders = []
    for source in sources("tests"):
        for where, node in promises_of(source):
            sentence = (ast.get_docstring(node) or "").partition("\n\n")[0]
            if not sentence.endswith(".") or re.match(r"(?i)(test|checks?|verif\w+)\b", sentence):
                offenders.append(f"{where}: {sentence or 'no sentence'}")

    assert not offenders, "\n".join(offenders)


def test_every_test_can_fail() -> None:
    """Every test asserts something itself or through a function of the tests that does."""
    every_test = [pair for source in sources("tests") for pair in promises_of(source)]
    helpers = {node.name for source in sources("tests") for _, node in source.definitions() if looks(node)}
    offenders = [
        where
        for where, node in every_test
        if not looks(node)
        and not any(isinstance(child, ast.Call) and called_name(child) in helpers for child in ast.walk(node))
    ]

    assert not offenders, "\n".join(offenders)


PACED = ("tests/bench/", "tests/engines.py")
"""Scripts that let time pass on purpose, and the wait for a server's process, which looks each time."""


def gives_way(node: ast.AST) -> bool:
    """True for sleep(0), which only lets others go on."""
    match node:
        case ast.Call(func=ast.Attribute(attr="sleep"), args=[ast.Constant(value=0)]):
            return True
        case _:
            return False


def test_no_test_sleeps_or_is_left_out() -> None:
    """Tests wait for what they want to see; none is left out, but where the machine lacks a device."""
    offenders = []
    for source in sources("tests"):
        banned = {"skip", "xfail", "importorskip"} | (set() if source.where.startswith(PACED) else {"sleep"})
        if not any(name in source.text for name in banned):
            continue
        fine = {id(node.func) for node in ast.walk(source.tree) if isinstance(node, ast.Call) and gives_way(node)}
        offenders += [
            f"{source.where}:{node.lineno}"
            for node in ast.walk(source.tree)
            if isinstance(node, ast.Attribute) and node.attr in banned and id(node) not in fine
        ]

    assert not offenders, "\n".join(offenders)
