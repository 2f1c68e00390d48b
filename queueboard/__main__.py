"""`python -m queueboard` is the same as `queueboard`."""

import sys

from queueboard.cli import main

if __name__ == "__main__":
    sys.exit(main())
