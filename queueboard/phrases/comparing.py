"""Names and addresses compared, in words: what differs, and what could not be compared."""

from queueboard.clean import shown
from queueboard.shop.comparing_names import address_on_file
from queueboard.shop.picture import BoxPicture
from queueboard.values.compared import Compared, Difference, Source

NOTHING = "nothing"


def compared_words(found: Compared, box: BoxPicture) -> tuple[str, ...]:
    """What is on file, then what differs, part by part, or that it is the same; people's text is in it."""
    on_file = f"on file: {', '.join(filter(None, (box.customer.name, address_on_file(box.customer))))}"
    return tuple(line for line in (on_file, *map(difference_words, found.differences), _rest(found)) if line)


def difference_words(one: Difference) -> str:
    """HOUSE NUMBER differs: 12 on file, 21 on the label, nothing on the note."""
    says = ", ".join(f"{shown(text) or NOTHING} {source.value}" for source, text in one.says.items())
    return f"{one.part.value.upper()} differs: {says}"


def differs_words(found: Compared) -> str:
    """All that differs in one sentence to ask by: The house number differs: read both."""
    parts = " and ".join(one.part.value for one in found.differences)
    verb = "differ" if len(found.differences) > 1 else "differs"
    return f"The {parts} {verb}: read them again, or ask the customer."


def _rest(found: Compared) -> str:
    missing = [what for what, sources in (("name", found.names), ("address", found.addresses)) if len(sources) < 2]
    same = [what for what, sources in (("name", found.names), ("address", found.addresses)) if len(sources) > 1]
    if missing:
        gaps = " and ".join(f"the {what} ({_lacks(found, what)})" for what in missing)
        return f"not compared: {gaps}"
    return "" if found.differences else f"{' and '.join(same)}: the same"


def _lacks(found: Compared, what: str) -> str:
    sources = found.names if what == "name" else found.addresses
    return "not typed from the label" if Source.FILE in sources else f"no {what} on file"
