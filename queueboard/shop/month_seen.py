"""A month as the shop file has it, for its figures."""

from dataclasses import replace
from datetime import datetime, timedelta

from queueboard.calendar.days import day_ends
from queueboard.figures.month import Debt, Month, MonthFigures, MonthSeen, TimedRun, month_figures
from queueboard.money.bill import totals
from queueboard.planning.learning import beyond_belief
from queueboard.records import month as records
from queueboard.records.accounts import LeftUnpaid, left_unpaid
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import to_us
from queueboard.shop.measuring import estimated_seconds
from queueboard.shop.opening import Shop
from queueboard.shop.saying import told_between
from queueboard.shop.settings_now import settings_in
from queueboard.words import Column

MOST_ON_THE_WAY_DAYS = 60
"""A parcel leaves at most so many days before the day told."""


def figures_of(shop: Shop, now: datetime, month: Month) -> MonthFigures:
    """The figures of a month by its days in the shop's zone; of the one that is now, as far as it has come."""
    with shop.reading() as database:
        return month_figures(_seen(database, now, month))


def _seen(database: ShopDatabase, now: datetime, month: Month) -> MonthSeen:
    zone = settings_in(database).zone
    (first, _), (end, _) = day_ends(zone, month.first), day_ends(zone, month.end)
    ends = to_us(first), to_us(end)
    told = told_between(database, now, month.first, month.end + timedelta(days=MOST_ON_THE_WAY_DAYS))
    return MonthSeen(
        month=month,
        ready=tuple(replace(one, at=one.at.astimezone(zone)) for one in records.first_ready(database, *ends)),
        closed=records.closed_bills(database, *ends),
        told=tuple(one for one in told if month.first <= one.cut_off.date() < month.end),
        tested=records.tested_knives(database, *ends),
        call_backs=records.call_backs(database, *ends),
        declined=records.declined_knives(database, *ends),
        runs=_runs(database, *ends),
        payments=records.paid_between(database, *ends),
        debts=_debts(database, min(end, now.astimezone(zone), key=datetime.timestamp)),
        belts=records.belts_fitted(database, *ends),
    )


def _runs(database: ShopDatabase, first_us: int, end_us: int) -> tuple[TimedRun, ...]:
    """The timed runs whose length is believed, as where minutes are learned."""
    measured = (
        (max(0, run.worked_seconds - run.set_up_seconds), estimated_seconds(run), knives)
        for run, knives in records.timed_runs(database, first_us, end_us)
    )
    return tuple(
        TimedRun(hands_on_seconds=seconds, knives=knives)
        for seconds, estimate, knives in measured
        if beyond_belief(seconds, estimate) is None
    )


def _debts(database: ShopDatabase, at: datetime) -> tuple[Debt, ...]:
    """What was owed at an instant for what had left by then, box by box, as the bills stand now."""
    owed = ((one, _owed_at(one, at)) for one in left_unpaid(database) if one.left_at < at)
    return tuple(Debt(customer=one.customer, cents=cents) for one, cents in owed if cents > 0)


def _owed_at(one: LeftUnpaid, at: datetime) -> int:
    paid = tuple(payment for payment in one.bill.payments if payment.at < at)
    bill = replace(one.bill, payments=paid)
    if one.box.closed_at is not None and one.box.closed_at < at:
        return totals(bill).owed_cents
    gone = {knife.id for knife in bill.knives if knife.column is Column.GONE and knife.moved_at < at}
    return totals(bill.only(gone)).owed_cents
