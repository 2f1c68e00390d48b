"""Looking again: what was typed into a question is carried into the same question, asked anew over what stands now."""

from textual.screen import Screen

from queueboard.board.forms.fields import Choice, Field, Row, Tick

Part = Field | Choice[object] | Tick


def carry_over(old: Screen[bool], new: Screen[bool]) -> str:
    """Put what was typed or chosen in the old form into the new one; the sentence says what is stored there now."""
    before, stored = _parts(old), []
    for name, part in _parts(new).items():
        typed = before.get(name)
        if typed is None or not typed.touched:
            continue
        if part.first != typed.first:
            stored.append(f"{name} is now “{_offered(part)}”")
        part.put_back(typed.kept())
    if not stored:
        return "It has changed, but not in what you typed. Look it through, then Enter."
    return f"Stored meanwhile: {', '.join(stored)}. Enter puts yours in its place."


def _parts(form: Screen[bool]) -> dict[str, Part]:
    """What can be typed or chosen, by the name before it; without one by the place in the form."""
    names = {widget: name for row in form.query(Row).results(Row) for name, widget in row.pairs}
    parts = [part for part in form.query("*") if isinstance(part, Field | Choice | Tick)]
    return {
        names.get(part) or (part.text if isinstance(part, Tick) else f"the answer {place}"): part
        for place, part in enumerate(parts, start=1)
    }


def _offered(part: Part) -> str:
    """What a part was offered with, in words."""
    if isinstance(part, Choice):
        return part.answers[part.first][0]
    return part.first if isinstance(part, Field) else "yes" if part.first else "no"
