"""The command about one customer's data: find them, show or write out all that is known, erase it for good."""

import argparse

from queueboard.cli.common import (
    FINE,
    NOTHING_FOUND,
    Add,
    Clock,
    actor_of,
    add_shapes,
    named,
    pasted,
    say,
    say_json,
    shop_of,
    show,
    trouble,
)
from queueboard.errors import TypedError
from queueboard.papers.known import customers_facts, customers_list, known_facts, known_sheet, write_known
from queueboard.shop.erasing import all_known, erase, find_customers


def add_commands(add: Add) -> None:
    """The command of this file."""
    added = add("customer", customer, "all that is known of one customer: show it, write it out, erase it for good")
    added.add_argument("who", nargs="+", help="name, town or phone, or the number that this command lists")
    added.add_argument("--write", type=named, metavar="FILE", help="write it into a new file, for that customer")
    added.add_argument("--erase", action="store_true", help="erase it, once the shop's own period is over")
    added.add_argument("--reason", default="", metavar="TEXT", help="why it is erased, without names")
    added.add_argument("--though-owing", action="store_true", help="with --erase: also while they owe money")
    add_shapes(added)


def customer(args: argparse.Namespace, clock: Clock) -> int:
    """One customer who fits is shown, written out or erased; of several the list is printed."""
    if args.erase and (args.json or args.csv or args.write):
        raise TypedError("First write down what is known, with --write FILE; then erase it, in a command of its own.")
    if args.though_owing and not args.erase:
        raise TypedError("--though-owing goes with --erase only.")
    with shop_of(args) as shop:
        found = find_customers(shop, " ".join(args.who))
        if args.csv:
            return show(args, lambda: customers_facts(found), lambda: customers_list(found))
        if len(found) != 1:
            say(customers_list(found))
            return FINE if found else trouble("No customer fits; those who were erased fit nothing.", NOTHING_FOUND)
        (one,) = found
        if args.erase:
            erase(shop, actor_of(args, clock), one, args.reason, though_owing=args.though_owing)
            return say(
                f"Customer {one.id} is erased. Copies made before hold the words until they are thinned out, and so do "
                f"papers, exports and what lies aside; `queueboard check` names what lies aside.\n"
            )
        known = all_known(shop, one)
    if args.write is not None:
        write_known(known, args.write)
        return say(f"All that is known of customer {one.id} is in {pasted(args.write)}. Only its owner may read it.\n")
    return say_json(known_facts(known)) if args.json else say(known_sheet(known))
