"""Asking for the password of the shop's server, where one is needed and a person sits at the terminal."""

import argparse
import sys
from getpass import getpass

from queueboard.cli.common import Clock, Command
from queueboard.errors import PasswordNeededError
from queueboard.shop.opening import keep_password

ASKS = "Password of the shop's server (it does not show): "


def with_password(command: Command, args: argparse.Namespace, clock: Clock) -> int:
    """Run a command; where only a password is missing, ask for it once and begin again: nothing has happened yet."""
    try:
        return command(args, clock)
    except PasswordNeededError:
        if not sys.stdin.isatty():
            raise
    keep_password(getpass(ASKS))
    return command(args, clock)
