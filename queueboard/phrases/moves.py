"""History and undo in words: what was done, and what undoing it does."""

from collections.abc import Mapping
from datetime import datetime

from queueboard.phrases.dates import when_words
from queueboard.phrases.money import amount
from queueboard.priced_words import MoneySort
from queueboard.values.step import About, Step
from queueboard.words import Column

_BACK_TO = {
    Column.RECEIVED.value: "back to received",
    Column.ON_BENCH.value: "back on the bench",
    Column.TESTING.value: "back to testing",
    Column.READY.value: "back to ready",
}

_TAGS_NAMED = 4
"""Up to so many tags are named one by one."""

OPERATION_WORDS: Mapping[str, tuple[str, str]] = {
    "accept_knife": ("{what} taken on after all", "decline {what} again"),
    "add_charge": ("{what}: {to} put on the bill", "take the {to} off the bill of {what} again"),
    "add_customer": ("a customer added", "take the new customer out"),
    "add_knife": ("{what} added", "take {what} out again"),
    "add_thing": ("something that came with {what} added", "take out what was added to {what}"),
    "announce_box": ("{what} announced", "take the announced {what} off the board"),
    "arrived": ("{what} arrived", "{what} is only announced after all"),
    "ask_new_label": ("a new label asked for {what}", "put the label of {what} back as it was"),
    "begin_study": ("a study of the tester begun", "take the study of the tester back"),
    "begin_study_over": ("the study of the tester begun over", "put the readings of the study back"),
    "begin_trial": ("a belt trial begun: {was} with and without {to}", "take the belt trial of {to} back"),
    "begin_close_out": ("close-out of {what} begun", "give up the close-out of {what}"),
    "box_waits": ("{what} waits for {to}", "{what} does not wait for {to} after all"),
    "charge_missing": ("missing {to} charged on {what}: {cents}", "take back {cents} for the missing {to} on {what}"),
    "check_set": ("a swap set checked: {to}", "ask again how a swap set stands"),
    "define_set": ("a swap set described", "put the swap set back as it was"),
    "found_again": ("a missing {to} found again", "look for the missing {to} again"),
    "note_round": ("a kitchen's round noted, {what} taken along", "take the kitchen's round and {what} back"),
    "take_market": ("paper of the market taken in: {to}, {cents} paid", "take the paper of the market out again: {to}"),
    "call_off": ("{what} called off", "{what} is expected after all"),
    "close_day": ("the day {to} closed", "open the day {to} again"),
    "confirm_label": ("label or collector of {what} confirmed", "ask again about the label or collector of {what}"),
    "confirm_names": ("names on {what} compared", "ask again about the names on {what}"),
    "correct_box": ("{what} corrected", "put {what} back as it was typed before"),
    "correct_customer": ("a customer corrected", "put the customer back as it was typed before"),
    "correct_knife": ("{what} corrected", "put {what} back as it was typed before"),
    "count_spares": ("spares of {to} counted", "put the spares of {to} back as they were"),
    "count_till": ("{to} counted: {cents}", "take back the count of {to}, {cents}"),
    "count": ("{what} counted", "take the count of {what} back"),
    "decline_knife": ("{what} declined: {to}", "take {what} on after all"),
    "empty_dust": ("dust tray emptied and looked at", "the dust tray was not emptied after all"),
    "end_trial": ("the belt trial of {to} on {was} ended", "let the belt trial of {to} on {was} go on"),
    "erase_customer": ("a customer erased", "bring the words about a customer back"),
    "expect_box": ("{what} expected otherwise", "expect {what} as before"),
    "finish_run": ("run of {what} finished", "put {what} back into the run"),
    "finish_untimed": ("run of {what} done without timing", "put {what} back into the run"),
    "finish_study": ("the study of the tester finished", "take the study of the tester up again"),
    "fit_belt": ("belt {to} fitted for {was}", "take belt {to} off {was} again, back to the spares"),
    "fix_day_list": ("the order of the day list fixed", "let go of the fixed order of the day list"),
    "found": ("{what} found", "look for {what} again"),
    "found_among": ("{what} found in the tray of box {was}", "look for {what} again"),
    "found_into_box": ("{what} put in from the found knives", "put {what} back to the found knives"),
    "give_box_to": ("{what} given to another customer", "give {what} back to the customer it had before"),
    "go_on_run": ("run of {what} goes on", "pause the run of {what} again"),
    "knives_wait": ("{what} waits for {to}", "{what} does not wait for {to} after all"),
    "label_bought": ("label of {what} bought", "the label of {what} is still to be bought"),
    "link_call_back": ("{what} linked to box {was}: a call-back", "{what} is no call-back of box {was} after all"),
    "leave_close_out": ("close-out of {what} given up", "take the close-out of {what} up again"),
    "leave_run": ("run of {what} left", "take the run of {what} up again"),
    "merge_customers": ("two customers made one", "make the one customer two again"),
    "move_belt": ("belt {was} moved to finer duty: {to}", "put belt {was} back from {to}"),
    "move_to_box": ("{what} moved into another box as {to}", "put {to} back as {what}"),
    "move_knives": ("{what} moved to {to}", "put {what} {back}"),
    "note_box": ("note on {what}", "put the note on {what} back as it was"),
    "not_theirs": ("{what} not theirs: to the found knives", "put {what} back into the box"),
    "note_found": ("a found knife noted", "take the found knife off the list"),
    "note_notice": ("customer of {what} told by {to}: {was}", "the customer of {what} was not told by {to}: {was}"),
    "note_knife": ("note on {what}", "put the note on {what} back as it was"),
    "note_restored": ("a copy put in the place of the shop file", "go back to the shop file before"),
    "open_box": ("{what} opened", "put {what} back unopened"),
    "pack_box": ("{what}: {to}", "{what} is not {to} after all"),
    "pause_run": ("run of {what} paused", "let the run of {what} go on"),
    "pay_account": ("{cents} {to} taken on the account of {what}", "take back {cents} {to} for the account of {what}"),
    "promise": ("a date told for {what}: {to}", "take back the date told for {what}: {to}"),
    "put_on_shelf": ("place of {what} noted", "put the place of {what} back as it was"),
    "read_study": ("{to} gf read on knife {number} of the study", "take the reading of {to} gf back"),
    "receive_box": ("{what} received", "take {what} out of the shop again"),
    "remove_belt": ("belt {was} taken off: {to}", "put belt {was} up again"),
    "say_chances": ("what was said of the boxes kept", "forget what was said of the boxes"),
    "send_off": ("{what} gone", "bring {what} back into the shop"),
    "set_flags": ("{what}: {to}", "turn back on {what}: {to}"),
    "set_label": ("label of {what} set", "put the label of {what} back as it was"),
    "set_limit": ("limit of {what} set to {cents}", "put the limit of {what} back as it was"),
    "set_price": ("price of {what} set to {cents}", "take back the price of {cents} for {what}"),
    "set_stable": ("stable period of {to} set", "put the stable period of {to} back as it was"),
    "settle": ("money of {what} settled", "ask again about the money of {what}"),
    "settle_found": ("said what became of a found knife", "put the found knife back on the list"),
    "settle_lost": ("loss of {what} settled", "look for {what} again"),
    "start_run": ("run of {what} begun: {to}", "take back the beginning of the run of {what}"),
    "strike_charge": ("{to} of {what} taken off the bill", "put the {to} of {what} back on the bill"),
    "strike_knife": ("{what} struck out", "put {what} back on the list"),
    "take_back": ("{what} received: a call-back of box {was}", "take {what} out of the shop again"),
    "take_orders": ("{to} orders taken in, from {what} on", "take the {to} orders from {what} on off the board"),
    "take_shop_label": ("{what} gets a label of the shop", "put the label of {what} back as it was"),
    "take_payment": ("{cents} {to} taken for {what}", "take back the payment of {cents} {to} for {what}"),
    "take_settings": ("settings taken in: {to}", "go back to the settings before: {to}"),
    "things_done": ("what {what} came with ticked", "tick again what {what} came with"),
    "throw_away": ("time of the run of {what} thrown away", "let the time of the run of {what} count again"),
    "look_at_dust_again": ("dust tray looked at again", "take back the second look at the dust tray"),
    "mark_spots": ("spots of {what} marked", "take the spots of {what} away again"),
    "prove_tray": ("{what} tested", "put {what} back in testing, as if not tested"),
    "read_spot": ("{what} read: {to} gf", "take the reading of {what} back"),
    "correct_reading": (
        "reading of {what} struck: {was} gf, {to} for it",
        "let the reading of {what} count again",
    ),
    "judge_edge": ("{what} tested {was}: {to}", "put {what} {back}, its test undone"),
    "let_go_by_eye": ("{what} to ready, by eye", "put {what} back to the test"),
    "look_twice": ("second look at {what}: {to}", "take the second look at {what} back"),
    "tick": ("{what} ticked", "take the tick on {what} back"),
    "tick_thing": ("something that came with {what} ticked", "take the tick on what came with {what} back"),
    "ticks_done": ("ticking of {what} done", "go on ticking {what}"),
    "untick": ("tick on {what} taken back", "tick {what} again"),
    "weigh_parcel": ("parcel of {what} weighed: {to}", "put weight and size of {what} back as they were"),
    "yes_to_count": ("yes to the count for {what}, {cents} without", "wait again for the yes to {what}"),
    "why_missing": ("said why {what} goes without some", "ask again why {what} goes without some"),
}
"""For each operation what it did, and what undoing it does. A test holds that no operation is missing."""

_GOES_ON = {
    "take_settings": ("settings taken in", "go back to the settings before"),
    "knives_wait": ("{what} goes on", "{what} waits again"),
    "box_waits": ("{what} goes on", "{what} waits again"),
    "weigh_parcel": ("weight and size of {what} taken back", "put weight and size of {what} back as they were"),
    "pack_box": ("{what} unpacked", "{what} is packed after all"),
    "put_on_shelf": ("place of {what} taken away", "put the place of {what} back as it was"),
    "set_limit": ("limit of {what} taken away", "put the limit of {what} back as it was"),
}
"""The same, where the operation took something back or told nothing more: it has no "to"."""

_GIVEN_BACK = ("{cents} {to} given back for {what}", "{cents} {to} was not given back for {what}")
"""A refund, whatever operation it came with."""


def step_words(step: Step) -> str:
    """What a step did, in the past: 417-3 moved to testing."""
    if step.about.undone:
        return f"undone: {_words(step.about.undone, step.about, 0)}"
    return _words(step.operation, step.about, 0)


def undo_words(step: Step) -> str:
    """What undoing a step does, as an order: put 417-3 back on the bench."""
    if step.operation == "undo":
        return f"do again: {_words(step.about.undone, step.about, 0)}" if step.about.undone else "undo it again"
    return _words(step.operation, step.about, 1)


def undone_words(step: Step) -> str:
    """What is said once a step is undone: Undone: 417-3 moved to testing. Of an undo: Done again: 417-3 moved."""
    if step.operation == "undo" and step.about.undone:
        return f"Done again: {_words(step.about.undone, step.about, 0)}."
    return f"Undone: {step_words(step)}."


def history_words(step: Step, now: datetime) -> str:
    """One line of history: yesterday 16:20 MB: 417-3 moved to testing."""
    return f"{when_words(step.at.astimezone(now.tzinfo), now)} {step.by}: {step_words(step)}"


def about_words(about: About) -> str:
    """What a step is about: 417-3; 417-1, 417-2 and 417-5; 9 knives of 417; box 417; it."""
    if not about.tags:
        return f"box {about.number}" if about.number is not None else "it"
    if len(about.tags) == 1:
        return about.tags[0]
    if len(about.tags) <= _TAGS_NAMED:
        return f"{', '.join(about.tags[:-1])} and {about.tags[-1]}"
    boxes = dict.fromkeys(tag.partition("-")[0] for tag in about.tags)
    return f"{len(about.tags)} knives of {', '.join(boxes)}"


def _words(operation: str, about: About, tense: int) -> str:
    """The words of an operation, done (0) or to be undone (1)."""
    table = _GOES_ON if not about.to and operation in _GOES_ON else OPERATION_WORDS
    words = table.get(operation, ("{what} changed", "put {what} back as it was"))
    pattern = (_GIVEN_BACK if about.was == MoneySort.REFUND.value else words)[tense]
    return pattern.format(
        what=about_words(about),
        to=about.to,
        was=about.was,
        number=about.number,
        back=_BACK_TO.get(about.was, "back where they were" if len(about.tags) > 1 else "back where it was"),
        cents=amount(about.cents or 0),
    )
