"""Return labels to buy or to use, by the last day on which using them still works, worst first."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.dialogs.label import LabelDialog
from queueboard.clean import cell_text
from queueboard.phrases import helping
from queueboard.phrases.boxes import due_words
from queueboard.phrases.carriers import carriers_lines
from queueboard.phrases.labels import label_due_words, label_over_words, label_wants
from queueboard.phrases.offers import asked_words, offers_words, to_buy_words
from queueboard.shop.offering import ask_new_label, label_offers, take_shop_label
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.label import LabelDue
from queueboard.values.offer import LabelOffer, OfferKind
from queueboard.words import LabelWord

NO_OFFER = "This label needs no other way: it does not die yet. + changes what was typed from it."


class LabelsScreen(BoxListScreen):
    """What the labels demand; one key asks for the label that was bought, others lead out where one dies."""

    HELP = helping.LABELS
    BINDING_GROUP_TITLE = "On the labels"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus,l,b",
            "label",
            "this label is bought, or its last day",
            tooltip="Note that this label is bought, or its last day.",
            id="labels.label",
        ),
        Binding("c,slash", "close_out", "close out, all or the part that is ready", id="labels.close_out"),
        Binding(
            "a",
            "ask_new",
            "the customer is asked for a new label",
            tooltip="Note that the customer is asked for a new label.",
            id="labels.ask",
        ),
        Binding(
            "s",
            "shop_label",
            "the shop buys a label instead",
            tooltip="Note that the shop buys a label instead.",
            id="labels.shop",
        ),
    ]
    KEYS = "Enter to it · + bought, its last day · digits: a box · ? keys · . back"

    def heading(self, picture: Picture) -> Content:
        """How many labels want something done, as the day line counts them; loudly those too late or too heavy for."""
        too_late = sum(due.word is LabelWord.TOO_LATE for due in picture.labels_due)
        over = sum(bool(label_over_words(picture.box_by_id(due.box_id), picture)) for due in picture.labels_due)
        loud = f" · {too_late} CANNOT BE USED IN TIME: call today" if too_late else ""
        heavy = f" · {over} ABOVE THE LIMIT" if over else ""
        to_do = picture.day_line.labels_due
        return Content.assemble(
            f"Return labels · {to_do} to do, {len(picture.labels_due) - to_do} good", (loud, "bold"), (heavy, "bold")
        )

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each label due, worst first; a sentence when there is none; below them what was typed of the carriers."""
        if not picture.labels_due:
            nothing = "No return label is due.\nA label is typed at the box: go to it and press l."
            return (Line(id="nothing", text=Content(nothing)),)
        below = Content(cell_text("\n ".join(carriers_lines(picture))))
        return (*(_line(due, picture) for due in picture.labels_due), Line(id="carriers", text=below))

    def action_label(self) -> None:
        """Ask for the label itself: bought now, its last day, its carrier."""
        box = self.under_cursor()
        if box is not None:
            self.app.push_screen(LabelDialog(self.desk, box.box.id))

    def action_close_out(self) -> None:
        """Lead out what is ready."""
        box = self.under_cursor()
        if box is not None:
            self.app.push_screen(CloseOutScreen(self.desk, box.box.id))

    def action_ask_new(self) -> None:
        """Note that the customer is asked for a label in place of this one."""
        found = self.offered(OfferKind.ASK_NEW)
        if found is not None and self.attempt(ask_new_label, found[0].box) is not None:
            self.say(asked_words(found[0]))

    def action_shop_label(self) -> None:
        """Note that the shop buys a label in place of this one."""
        found = self.offered(OfferKind.SHOP_LABEL)
        if found is not None and self.attempt(take_shop_label, found[0].box, found[1].cents) is not None:
            self.say(to_buy_words(found[0], found[1], self.desk.picture.settings))

    def offered(self, kind: OfferKind) -> tuple[BoxPicture, LabelOffer] | None:
        """The box under the cursor with the way out that a key asks for; a sentence and None where it has none."""
        box = self.under_cursor()
        if box is None:
            return None
        offer = next((one for one in label_offers(box, self.desk.picture) if one.kind is kind), None)
        if offer is None:
            self.say(NO_OFFER, trouble=True)
            return None
        return box, offer

    def under_cursor(self) -> BoxPicture | None:
        """The box of the label under the cursor; without one a sentence and None."""
        line = self.current()
        if line is None or line.number is None:
            self.say("Put the cursor on a label.", trouble=True)
            return None
        return self.desk.picture.box(line.number)


def _line(due: LabelDue, picture: Picture) -> Line:
    box = picture.box_by_id(due.box_id)
    loud = "!! " if due.word is LabelWord.TOO_LATE else ""
    ways = offers_words(label_offers(box, picture), picture.settings)
    return Line(
        id=str(due.box_id),
        number=box.box.number,
        text=Content.assemble(
            (f"{loud}{label_due_words(due, picture.now.date())}", "bold"),
            f" · box {box.box.number} · {cell_text(box.customer.name)}\n",
            f"    {label_wants(due, picture)} · {due_words(box, picture.now)}\n",
            f"    {ways}\n" if ways else "",
        ),
    )
