"""What was said and told against what was seen, and the minutes learned, as text and as plain data."""

from queueboard.papers.facts import Fact
from queueboard.papers.text import columns, page, section
from queueboard.phrases.said import NOTHING_SAID, chances_table, kept_words, minutes_table, yield_words
from queueboard.shop.first_look import Judged
from queueboard.shop.picture import Picture


def said_sheet(judged: Judged, picture: Picture) -> str:
    """Chances, then dates told, then minutes."""
    chances = chances_table(judged)
    minutes = columns(minutes_table(picture.settings, picture.minutes), right=frozenset({1, 2, 3, 4}))
    return page(
        ("What was said in the last year, and what was seen",),
        section("Chances of being late", columns(chances, right=frozenset({1, 2})) if chances else (NOTHING_SAID,)),
        section("Dates told to customers", (kept_words(judged),)),
        section("Minutes at the bench", (*minutes, yield_words(picture.minutes))),
    )


def said_facts(judged: Judged, picture: Picture) -> dict[str, Fact]:
    """The same for scripts."""
    settings, minutes = picture.settings, picture.minutes
    return {
        "shop": settings.name,
        "now": picture.now.isoformat(),
        "chances": [
            {
                "from_percent": tenth.from_percent,
                "boxes": tenth.said,
                "said_permille": tenth.said_permille,
                "late": tenth.late,
            }
            for tenth in judged.tenths
        ],
        "told": {"dates": judged.told, "kept": judged.kept, "replaced": judged.replaced},
        "processes": [
            {"name": process.name, "factor_permille": round(1000 * factor.value), "knives": factor.knives}
            for process, factor in zip(settings.processes, minutes.learned.processes, strict=True)
        ],
        "yield": {"permille": round(1000 * minutes.day_yield.mean), "days": minutes.day_yield.days},
    }
