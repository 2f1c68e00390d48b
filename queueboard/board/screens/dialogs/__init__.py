"""The small dialogs: one question each over the screen below."""

from queueboard.board.screens.dialogs.announced import AnnouncedDialog, CallOffDialog, ExpectDialog
from queueboard.board.screens.dialogs.charges import (
    AboveLimitDialog,
    ChargeDialog,
    LimitDialog,
    StrikeChargeDialog,
)
from queueboard.board.screens.dialogs.correct_menu import CorrectDialog
from queueboard.board.screens.dialogs.count import CountDialog
from queueboard.board.screens.dialogs.decline import DeclineDialog
from queueboard.board.screens.dialogs.knives import AddKnifeDialog, OpenBoxDialog, ThingDialog
from queueboard.board.screens.dialogs.label import LabelDialog
from queueboard.board.screens.dialogs.lost import LostDialog, StrikeDialog
from queueboard.board.screens.dialogs.money import PaymentDialog, PriceDialog
from queueboard.board.screens.dialogs.note import NoteDialog
from queueboard.board.screens.dialogs.opening import dialog_for
from queueboard.board.screens.dialogs.packing import FlagsDialog, PackingDialog
from queueboard.board.screens.dialogs.promise import PromiseDialog
from queueboard.board.screens.dialogs.rehome import MoveToBoxDialog
from queueboard.board.screens.dialogs.waiting import WaitingDialog
from queueboard.board.screens.dialogs.weigh import WeighDialog

__all__ = [
    "AboveLimitDialog",
    "AddKnifeDialog",
    "AnnouncedDialog",
    "CallOffDialog",
    "ChargeDialog",
    "CorrectDialog",
    "CountDialog",
    "DeclineDialog",
    "ExpectDialog",
    "FlagsDialog",
    "LabelDialog",
    "LimitDialog",
    "LostDialog",
    "MoveToBoxDialog",
    "NoteDialog",
    "OpenBoxDialog",
    "PackingDialog",
    "PaymentDialog",
    "PriceDialog",
    "PromiseDialog",
    "StrikeChargeDialog",
    "StrikeDialog",
    "ThingDialog",
    "WaitingDialog",
    "WeighDialog",
    "dialog_for",
]
