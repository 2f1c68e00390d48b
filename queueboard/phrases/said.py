"""How well the shop knows itself: chances said against what was seen, dates told and kept, minutes learned."""

from collections.abc import Iterator

from queueboard.phrases.dates import many
from queueboard.settings.rules import process_of
from queueboard.settings.shapes import Process, Settings
from queueboard.shop.bench_work import Minutes
from queueboard.shop.first_look import Judged
from queueboard.words import Condition

NOTHING_SAID = "Nothing yet: chances are kept each morning, judged when a cut-off is over."
NOTHING_TOLD = "No date told to a customer is over yet."


def chances_table(judged: Judged) -> tuple[tuple[str, ...], ...]:
    """Chance of being late as it was said in the morning, how many boxes, what was said on average, how many were."""
    rows = [
        (
            f"{tenth.from_percent}-{tenth.from_percent + 10} %",
            str(tenth.said),
            _percent(tenth.said_permille),
            f"{tenth.late} ({_percent(1000 * tenth.late // tenth.said)})",
        )
        for tenth in judged.tenths
    ]
    return (("said late", "boxes", "on average", "were late"), *rows) if rows else ()


def kept_words(judged: Judged) -> str:
    """46 of 50 dates told were kept (92 %); 3 of them were told again."""
    if not judged.told:
        return NOTHING_TOLD
    share = _percent(1000 * judged.kept // judged.told)
    again = f"; {judged.replaced} of them {'was' if judged.replaced == 1 else 'were'} told again"
    return f"{judged.kept} of {many(judged.told, 'date')} told kept ({share}){again if judged.replaced else ''}"


def minutes_table(settings: Settings, minutes: Minutes) -> tuple[tuple[str, ...], ...]:
    """Each process: dull knives by the settings, as learned, times how much, on how many measured knives."""
    return (
        ("process", "dull, by the settings", "as learned", "times", "knives"),
        *(
            (process.name, *_range(settings, process, factor.value), f"{factor.value:.2f}", str(factor.knives))
            for process, factor in zip(settings.processes, minutes.learned.processes, strict=True)
        ),
    )


def _range(settings: Settings, process: Process, factor: float) -> Iterator[str]:
    dull = [
        kind.minutes[Condition.DULL]
        for kind in settings.kinds
        if Condition.DULL in kind.minutes and process_of(settings, kind, kind.edge) == process
    ]
    for times in (1.0, factor):
        low, high = (f"{times * end:.3g}" for end in (min(dull, default=0), max(dull, default=0)))
        yield (f"{low} min" if low == high else f"{low}-{high} min") if dull else "-"


def yield_words(minutes: Minutes) -> str:
    """An hour at the bench is worth 54 min of the plan, by 12 full days; 2 more may have been left out."""
    day_yield = minutes.day_yield
    rests = f"by {many(day_yield.days, 'full day')}" if day_yield.days else "until full days show it"
    if day_yield.left_out:
        rests += f"; {many(day_yield.left_out, 'full day')} left out: far too little or too much was moved"
    return f"an hour at the bench is worth {round(60 * day_yield.mean)} min of the plan, {rests}"


def _percent(permille: int) -> str:
    return f"{(permille + 5) // 10} %"
