"""Instants as whole microseconds since 1970 in UTC, the only form in which they are stored."""

from datetime import UTC, datetime, timedelta

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def to_us(instant: datetime) -> int:
    """Microseconds since 1970; a time without a zone is refused, since nobody can tell which instant it is."""
    if instant.tzinfo is None:
        raise ValueError(f"{instant.isoformat()} has no time zone")
    return (instant - EPOCH) // timedelta(microseconds=1)


def from_us(us: int) -> datetime:
    """The instant, in UTC."""
    return EPOCH + timedelta(microseconds=us)
