"""Closed lists of what is told to a customer of a box that is ready, late, gone or not fetched."""

from enum import StrEnum


class MessageSort(StrEnum):
    """What a message to a customer says."""

    READY = "ready"
    SHIPPED = "shipped"
    DELAYED = "delayed"
    UNCLAIMED = "not fetched"


class NoticeWay(StrEnum):
    """How a customer was told; by a person's own means, never by the program."""

    TEXT = "text"
    CALL = "call"
    LETTER = "letter"
    MAIL = "e-mail"
