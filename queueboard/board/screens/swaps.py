"""Kitchens with swap sets: the list of them, and the sheet of one."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.desk import Desk
from queueboard.board.headed import HEAD
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.dialogs.swaps import ChargeMissingDialog, DefineSetDialog, RoundDialog
from queueboard.board.screens.paper_out import write_and_say
from queueboard.clean import cell_text
from queueboard.papers.swaps import swap_sheet
from queueboard.phrases import helping
from queueboard.phrases.dates import many
from queueboard.phrases.swaps import MISSING, NO_KITCHENS, kitchen_words, sheet_parts
from queueboard.shop.picture import Picture
from queueboard.shop.swapping import check_set, found_again
from queueboard.shop.swaps_seen import Kitchen, MissingSeen, kitchens


class SwapsScreen(BoxListScreen):
    """Each kitchen with its next round, by name."""

    HELP = helping.SWAPS
    BINDING_GROUP_TITLE = "Kitchens with swap sets"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,n", "define", "describe a set", id="swaps.define"),
        Binding("W", "leave", "back to the board", id="swaps.leave"),
    ]
    KEYS = "Enter its sheet · + describe a set · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.seen: tuple[Kitchen, ...] = ()

    def show(self, picture: Picture) -> None:
        """Read the kitchens anew with each picture."""
        self.seen = kitchens(self.desk.shop, picture.now)
        super().show(picture)

    def heading(self, picture: Picture) -> Content:
        """How many there are, and how many sets are to be checked."""
        due = sum(one.check_due for one in self.seen)
        return Content(
            f"Swap sets · {many(len(self.seen), 'kitchen')}" + (f", {many(due, 'set')} to be checked" if due else "")
        )

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """One entry a kitchen."""
        today = picture.now.date()
        if not self.seen:
            return (Line(id="nothing", text=Content(NO_KITCHENS)),)
        return tuple(
            Line(
                id=f"kitchen {one.customer.id}",
                stops=True,
                text=Content.assemble(
                    (cell_text(one.customer.name), "bold"), f"\n    {cell_text(kitchen_words(one, today))}"
                ),
            )
            for one in self.seen
        )

    def action_define(self) -> None:
        """Ask what is in a set."""
        self.app.push_screen(DefineSetDialog(self.desk))

    def action_choose(self) -> None:
        """Open the sheet of the kitchen under the cursor; a box chosen there is where the board goes."""
        line = self.current()
        one = next((x for x in self.seen if line is not None and line.id == f"kitchen {x.customer.id}"), None)
        if self.typed or one is None:
            super().action_choose()
        else:
            self.app.push_screen(SwapSheetScreen(self.desk, one.customer.id), self.go_on)

    def go_on(self, number: int | None) -> None:
        """Leave with the box that was chosen on the sheet."""
        if number is not None:
            self.dismiss(number)


class SwapSheetScreen(BoxListScreen):
    """One kitchen: the clean tray above, the dull one below, what is missing by kind, what is charged."""

    HELP = helping.SWAP_SHEET
    BINDING_GROUP_TITLE = "The sheet of a kitchen"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,n", "round", "note a round: a set brought, a set taken along", id="swap.round"),
        Binding("asterisk,c", "check", "look the next set through", id="swap.check"),
        Binding("slash,y", "charge", "charge the missing knife", id="swap.charge"),
        Binding("minus,f", "found", "the missing knife is found", id="swap.found"),
        Binding("v", "write", "write the sheet to a file, to print it", id="swap.write"),
        Binding("W", "leave", "back to the kitchens", id="swap.leave"),
    ]
    KEYS = "+ round · * check next set · / charge · - found · v file · ? keys · . back"

    def __init__(self, desk: Desk, customer_id: int) -> None:
        super().__init__(desk)
        self.customer_id = customer_id
        self.kitchen: Kitchen | None = None

    def show(self, picture: Picture) -> None:
        """Read the kitchen anew with each picture."""
        seen = kitchens(self.desk.shop, picture.now)
        self.kitchen = next((one for one in seen if one.customer.id == self.customer_id), None)
        super().show(picture)

    def heading(self, picture: Picture) -> Content:
        """Whose it is, and what is next."""
        if self.kitchen is None:
            return Content("That kitchen has no swap sets any more.")
        said = cell_text(kitchen_words(self.kitchen, picture.now.date()))
        return Content.assemble((cell_text(self.kitchen.customer.name), "bold"), f"\n{said}")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Heading by heading; the cursor stops at every line, so that a long sheet can be read to its end."""
        if self.kitchen is None:
            return ()
        missing = iter(self.kitchen.missing)
        found: list[Line] = []
        for heading, lines in sheet_parts(self.kitchen, picture.settings, picture.now.date()):
            found.append(Line(id=heading, text=Content.styled(heading, HEAD)))
            for place, line in enumerate(lines):
                knife = next(missing, None) if heading == MISSING else None
                found.append(
                    Line(
                        id=f"{heading} {place}" if knife is None else f"missing {knife.knife.id}",
                        text=Content(f"  {cell_text(line)}"),
                        stops=True,
                    )
                )
        return tuple(found)

    def action_round(self) -> None:
        """Ask what was brought and what came along."""
        if self.kitchen is not None:
            self.app.push_screen(RoundDialog(self.desk, self.kitchen))

    def action_check(self) -> None:
        """Note how the next set stands, and say it."""
        if self.kitchen is None or self.kitchen.next_set is None:
            self.say("No set of this kitchen is here to be checked.", trouble=True)
            return
        done = self.attempt(check_set, self.kitchen.next_set.id)
        if done is not None:
            self.say("It is complete." if done[0] else "It is not complete: the line on top says what.")

    def action_charge(self) -> None:
        """Ask what the missing knife is charged with."""
        one = self.missing_here()
        if one is not None:
            self.app.push_screen(ChargeMissingDialog(self.desk, one, self.customer_id))

    def action_found(self) -> None:
        """Note that the missing knife turned up."""
        one = self.missing_here()
        if one is not None and self.attempt(found_again, one.knife) is not None:
            self.say(f"The {one.knife.kind} is found.")

    def action_write(self) -> None:
        """Write the sheet beside the shop file and say where."""
        if self.kitchen is None:
            return
        write_and_say(self, f"swaps-{self.customer_id}.txt", swap_sheet(self.kitchen, self.desk.picture))

    def action_choose(self) -> None:
        """To the box typed, else to the box of the set that is here."""
        boxes = (one.place.box for one in self.kitchen.sets) if self.kitchen is not None else ()
        number = next((box.number for box in boxes if box is not None and box.closed_at is None), None)
        if self.typed or number is None:
            super().action_choose()
        else:
            self.dismiss(number)

    def missing_here(self) -> MissingSeen | None:
        """The missing knife under the cursor, or the only one there is; else a sentence and None."""
        line = self.current()
        missing = self.kitchen.missing if self.kitchen is not None else ()
        here = (x for x in missing if line is not None and line.id == f"missing {x.knife.id}")
        one = next(here, missing[0] if len(missing) == 1 else None)
        if one is None:
            self.say("Put the cursor on a missing knife.", trouble=True)
        return one
