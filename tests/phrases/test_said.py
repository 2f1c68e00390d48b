"""How well the shop knows itself, in words."""

from dataclasses import replace

from queueboard.phrases.said import NOTHING_TOLD, chances_table, kept_words, minutes_table, yield_words
from queueboard.planning.learning import MeasuredRun, Yield, learn
from queueboard.shop.bench_work import untaught
from queueboard.shop.first_look import Judged
from queueboard.values.measured import SaidTenth
from tests.shop_settings import settings

NOTHING = Judged(tenths=(), told=0, kept=0, replaced=0)


def test_chances_stand_beside_what_was_seen() -> None:
    """Each tenth with its boxes, what was said on average and how many were late."""
    tenth = SaidTenth(from_percent=10, said=40, said_permille=148, late=7)

    assert chances_table(replace(NOTHING, tenths=(tenth,)))[1:] == (("10-20 %", "40", "15 %", "7 (18 %)"),)
    assert chances_table(NOTHING) == ()


def test_dates_kept_are_told_with_those_told_again() -> None:
    """So many of so many, the share, and how many were told again; nothing is made of nothing."""
    assert kept_words(Judged(tenths=(), told=50, kept=46, replaced=3)) == (
        "46 of 50 dates told kept (92 %); 3 of them were told again"
    )
    assert kept_words(Judged(tenths=(), told=1, kept=1, replaced=0)) == "1 of 1 date told kept (100 %)"
    assert kept_words(NOTHING) == NOTHING_TOLD


def test_learned_minutes_stand_beside_those_of_the_settings() -> None:
    """A slow process shows more minutes than the settings, and the knives that taught it; one without kinds a dash."""
    runs = [
        MeasuredRun(process=0, knives=12, boxes=3, starter_seconds=3600, estimated_seconds=3600, measured_seconds=5400)
    ] * 50
    known = settings()
    minutes = replace(untaught(3), learned=learn(runs, 3))

    head, plain, serrated, _ = minutes_table(known, minutes)

    assert head[0] == "process"
    assert (plain[0], plain[1], plain[4]) == ("plain", "5 min", "600")
    assert 7 < float(plain[2].removesuffix(" min")) < 7.5
    assert serrated[4] == "0"


def test_the_yield_says_on_how_many_days_it_rests() -> None:
    """Minutes of an hour, and the full days behind it."""
    taught = replace(untaught(3), day_yield=Yield(mean=0.9, sd=0.1, days=12, left_out=0))

    assert yield_words(taught) == "an hour at the bench is worth 54 min of the plan, by 12 full days"
    assert yield_words(untaught(3)).endswith("until full days show it")
    odd = replace(untaught(3), day_yield=Yield(mean=0.9, sd=0.1, days=0, left_out=2))
    assert yield_words(odd).endswith(
        "until full days show it; 2 full days left out: far too little or too much was moved"
    )
