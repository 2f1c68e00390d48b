"""Which dialog a screen's key opens, for the knife under its cursor or for its box."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog
from queueboard.board.screens.dialogs.announced import AnnouncedDialog
from queueboard.board.screens.dialogs.call_back import LinkCallBackDialog
from queueboard.board.screens.dialogs.charges import ChargeDialog, LimitDialog, StrikeChargeDialog
from queueboard.board.screens.dialogs.correct_menu import CorrectDialog
from queueboard.board.screens.dialogs.count import CountDialog
from queueboard.board.screens.dialogs.decline import DeclineDialog
from queueboard.board.screens.dialogs.knives import AddKnifeDialog, OpenBoxDialog, ThingDialog
from queueboard.board.screens.dialogs.label import LabelDialog
from queueboard.board.screens.dialogs.lost import LostDialog
from queueboard.board.screens.dialogs.money import PaymentDialog, PriceDialog
from queueboard.board.screens.dialogs.note import NoteDialog
from queueboard.board.screens.dialogs.packing import FlagsDialog, PackingDialog
from queueboard.board.screens.dialogs.promise import PromiseDialog
from queueboard.board.screens.dialogs.rehome import MoveToBoxDialog
from queueboard.board.screens.dialogs.shelf import PlaceDialog
from queueboard.board.screens.dialogs.waiting import WaitingDialog
from queueboard.board.screens.dialogs.weigh import WeighDialog
from queueboard.errors import RuleError
from queueboard.values.box import Box
from queueboard.values.knife import Knife


def _open(desk: Desk, box_id: int) -> Dialog:
    """A box in the door is opened; of one that is only announced it is first asked what became of it."""
    announced = desk.picture.box_by_id(box_id).box.announced
    return AnnouncedDialog(desk, box_id) if announced else OpenBoxDialog(desk, box_id)


FOR_BOX: Mapping[str, Callable[[Desk, int], Dialog]] = {
    "payment": PaymentDialog,
    "strike": StrikeChargeDialog,
    "limit": LimitDialog,
    "promise": PromiseDialog,
    "label": LabelDialog,
    "packing": PackingDialog,
    "flags": FlagsDialog,
    "add": AddKnifeDialog,
    "open": _open,
    "thing": ThingDialog,
    "lost": LostDialog,
    "weigh": WeighDialog,
    "place": PlaceDialog,
    "call_back": LinkCallBackDialog,
}
"""Dialogs about a box, whatever is under the cursor."""

FOR_KNIFE: Mapping[str, Callable[[Desk, Knife], Dialog]] = {
    "decline": DeclineDialog,
    "price": PriceDialog,
    "rehome": MoveToBoxDialog,
}
"""Dialogs about one knife."""

FOR_EITHER: Mapping[str, Callable[[Desk, Knife | Box], Dialog]] = {
    "waiting": WaitingDialog,
    "charge": ChargeDialog,
    "note": NoteDialog,
    "correct": CorrectDialog,
}
"""Dialogs about what is under the cursor, knife or box."""


def dialog_for(what: str, desk: Desk, about: Knife | Box) -> Dialog:
    """The dialog by its short name; RuleError when it needs a knife and there is a box.

    Where a box waits for the yes to a knife beyond its note, waiting asks for that answer.
    """
    if what == "waiting" and (isinstance(about, Box) or about.apart):
        box_id = about.box_id if isinstance(about, Knife) else about.id
        if desk.picture.box_by_id(box_id).apart:
            return CountDialog(desk, box_id)
    if what in FOR_BOX:
        return FOR_BOX[what](desk, about.box_id if isinstance(about, Knife) else about.id)
    if what in FOR_EITHER:
        return FOR_EITHER[what](desk, about)
    if isinstance(about, Box):
        raise RuleError("Put the cursor on a knife first; this is about one knife.")
    return FOR_KNIFE[what](desk, about)
