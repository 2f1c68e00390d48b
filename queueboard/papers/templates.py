"""The one set-up for papers made from templates: people's words are escaped wherever the paper is HTML."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined, select_autoescape


@cache
def _templates() -> Environment:
    return Environment(
        loader=FileSystemLoader(Path(__file__).parent),
        autoescape=select_autoescape(disabled_extensions=("txt.j2",), default=True),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )


def filled(name: str, facts: Mapping[str, object]) -> str:
    """A template filled in; a name that it asks for and is not there is an error, never a gap."""
    return _templates().get_template(name).render(facts)
