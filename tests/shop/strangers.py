"""Doing something as somebody else."""

import os
from collections.abc import Iterator
from contextlib import contextmanager

NOBODY = 65534
"""The user who owns nothing, on most systems."""


@contextmanager
def stranger() -> Iterator[None]:
    """Do something as somebody who owns neither file nor folder; without such rights the test's own user is one."""
    mighty = os.geteuid() == 0
    if mighty:
        os.seteuid(NOBODY)
    try:
        yield
    finally:
        if mighty:
            os.seteuid(0)
