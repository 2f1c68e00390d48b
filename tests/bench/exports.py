"""What of damaged exports is refused: python -m tests.bench.exports [DAMAGES] [SEED].

Each damage is done to a fresh copy of an export of a shop with two parcels, which is then taken in. The control is the
same export without any damage, which must be taken and come out the same, byte for byte.
"""

import random
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.errors import FileError
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.opening import close_shop, open_shop
from tests.bench.machine import asked, heading
from tests.shop.place import by, parcel, small_shop

Draw = random.Random


def turn_a_bit(whole: bytes, draw: Draw) -> bytes:
    """One bit the other way."""
    bit = draw.randrange(len(whole) * 8)
    return whole[: bit // 8] + bytes([whole[bit // 8] ^ 1 << bit % 8]) + whole[bit // 8 + 1 :]


def cut_the_end(whole: bytes, draw: Draw) -> bytes:
    """Anything from one byte to all of it missing."""
    return whole[: draw.randrange(len(whole))]


def double_a_line(whole: bytes, draw: Draw) -> bytes:
    """A line twice."""
    lines = whole.splitlines(keepends=True)
    place = draw.randrange(len(lines))
    return b"".join((*lines[: place + 1], lines[place], *lines[place + 1 :]))


def drop_a_line(whole: bytes, draw: Draw) -> bytes:
    """A line missing."""
    lines = whole.splitlines(keepends=True)
    del lines[draw.randrange(len(lines))]
    return b"".join(lines)


def exchange_two_lines(whole: bytes, draw: Draw) -> bytes:
    """Two lines in each other's place."""
    lines = whole.splitlines(keepends=True)
    one, other = draw.sample(range(len(lines)), 2)
    lines[one], lines[other] = lines[other], lines[one]
    return b"".join(lines)


def add_some(whole: bytes, draw: Draw) -> bytes:
    """A few bytes more, anywhere."""
    place = draw.randrange(len(whole) + 1)
    return whole[:place] + draw.randbytes(draw.randint(1, 9)) + whole[place:]


DAMAGES: tuple[Callable[[bytes, Draw], bytes], ...] = (
    turn_a_bit,
    cut_the_end,
    double_a_line,
    drop_a_line,
    exchange_two_lines,
    add_some,
)


def is_taken(content: bytes, folder: Path) -> bool:
    """True when an export with this content is taken in, or anything of it stays behind."""
    source, target = folder / "in.jsonl", folder / "taken.qb"
    source.write_bytes(content)
    try:
        take_in(target, source, by())
    except FileError:
        return target.exists()
    target.unlink()
    return True


def comes_out_the_same(content: bytes, folder: Path) -> bool:
    """True when an export is taken in and written out again as it was."""
    source, again = folder / "in.jsonl", folder / "again.jsonl"
    source.write_bytes(content)
    take_in(folder / "same.qb", source, by())
    shop = open_shop(folder / "same.qb")
    write_out(shop, again)
    close_shop(shop)
    return again.read_bytes() == content


def main() -> None:
    """Print the table."""
    wanted, seed = asked(5000, 7)
    draw, tried, taken = random.Random(seed), Counter[str](), Counter[str]()  # noqa: S311  # no secret hangs on it
    with TemporaryDirectory() as name:
        folder = Path(name)
        shop = small_shop(folder)
        for customer in ("R. Tallis", "Élodie Quillon"):
            parcel(shop, name=customer, things=("a roll",))
        write_out(shop, folder / "out.jsonl")
        close_shop(shop)
        whole = (folder / "out.jsonl").read_bytes()
        print(heading("tests.bench.exports", seed))
        print(f"control, no damage: {'taken, and the same again' if comes_out_the_same(whole, folder) else 'FAILED'}")
        for number in range(wanted):
            damage = DAMAGES[number % len(DAMAGES)]
            damaged = damage(whole, draw)
            tried[damage.__name__] += damaged != whole
            taken[damage.__name__] += damaged != whole and is_taken(damaged, folder)
    for damage in DAMAGES:
        says = damage.__name__.replace("_", " ")
        print(f"{says:<20} {tried[damage.__name__]:>6} tried {taken[damage.__name__]:>6} taken")
    print(f"{'in all':<20} {tried.total():>6} tried {taken.total():>6} taken")


if __name__ == "__main__":
    main()
