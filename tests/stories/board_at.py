"""The real board at an instant that a story names: `python -m tests.stories.board_at SHOP_FILE INSTANT`."""

import sys
from datetime import datetime
from pathlib import Path

from queueboard.board.run import run_board
from queueboard.shop.opening import close_shop, open_shop


def main(file: str, instant: str) -> int:
    """Open the board as MB, its clock standing still at the instant (ISO 8601, with its zone)."""
    now = datetime.fromisoformat(instant)
    shop = open_shop(Path(file))
    try:
        return run_board(shop, "MB", lambda: now, no_mouse=True)
    finally:
        close_shop(shop)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
