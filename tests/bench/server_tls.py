"""What goes over the net to a shop's server, and where its password can be read: python -m tests.bench.server_tls.

Needs a PostgreSQL with TLS, as Debian's is (the server of `postgres-test` has none), and openssl; run by hand. A server
with a certificate of its own is set up as README says, its log as talkative as it can be, and the program is started
against it as a person does: with the password in a PGPASSFILE, then typed. All that passes is read on its way, and the
password is looked for wherever it could have been left; each search has something beside it that it must find.
"""

import os
import secrets
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

import psycopg
from ptyprocess import PtyProcess

from queueboard.records.pointing import point
from queueboard.shop.carrying import write_out
from queueboard.shop.opening import close_shop, keep_password, open_shop
from tests.bench.machine import heading
from tests.bench.tls_server import Server, Wire
from tests.house.tree import ROOT
from tests.shop.place import parcel

NAME = "Perpetua Quillon"
"""A customer, whose name would be read on the way."""


def environment(home: Path, **more: str) -> dict[str, str]:
    """What the program is told: a home of its own and nothing else of ours."""
    return {"HOME": str(home), "PATH": os.environ["PATH"], "LANG": "C.UTF-8", "TERM": "xterm-256color", **more}


class Watched:
    """What all who look at this machine's processes could read of ours, again and again while they run."""

    def __init__(self) -> None:
        self.seen = set[bytes]()

    def run(self, told: dict[str, str], *words: str) -> tuple[int, str]:
        """Run the program to its end; its code and all that it said."""
        started = subprocess.Popen(
            [sys.executable, "-m", "queueboard", *words],
            cwd=ROOT,
            env=told,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        while started.poll() is None:
            self.look(started.pid)
            with suppress(subprocess.TimeoutExpired):
                started.wait(0.02)
        with started:
            assert started.stdout is not None
            return started.returncode, started.stdout.read()

    def look(self, pid: int) -> None:
        """Its command line and its environment."""
        for name in ("cmdline", "environ"):
            with suppress(OSError):
                self.seen.add(Path(f"/proc/{pid}/{name}").read_bytes())

    def has(self, word: str) -> bool:
        """True when the word could be read there."""
        return any(word.encode() in one for one in self.seen)


def typed(watched: Watched, told: dict[str, str], password: str, *words: str) -> str:
    """Run the program on a terminal, and type the password where it is asked for; what then stood there."""
    program = PtyProcess.spawn([sys.executable, "-m", "queueboard", *words], cwd=str(ROOT), env=told)
    shown, answered = b"", False
    with suppress(EOFError):
        while True:
            shown += program.read(1024)
            watched.look(program.pid)
            if not answered and b"does not show" in shown:
                program.write(password.encode() + b"\n")
                answered = True
    program.close()
    return shown.decode(errors="replace")


def found_in(folder: Path, word: str) -> list[str]:
    """The files under a folder that hold a word."""
    files = [file for file in folder.rglob("*") if file.is_file()]
    return [str(file.relative_to(folder)) for file in files if word.encode() in file.read_bytes()]


FAILED = list[str]()


def tell(said: str, *, holds: bool) -> None:
    """One line of the table."""
    print(f"{said:<100}{'yes' if holds else 'NO':>5}", flush=True)
    if not holds:
        FAILED.append(said)


@contextmanager
def set_up(password: str) -> Iterator[tuple[Server, Wire, Path]]:
    """The server, the wire to it, and a home for the person."""
    with TemporaryDirectory() as name, TemporaryDirectory() as home:
        server = Server(Path(name), password)
        wire = Wire(server.port)
        try:
            yield server, wire, Path(home)
        finally:
            wire.door.close()
            server.stop()


def lets_in(run: Callable[..., tuple[int, str]], secure: str, home: Path, password: str) -> list[str]:
    """Begin a shop and work in it as a person does; all that was said and shown."""
    code, begun = run("--file", secure, "start")
    tell(
        "begun over TLS, its certificate and its name verified (verify-full), password from PGPASSFILE", holds=code == 0
    )
    _work(home / "bench.qb", secure, password)
    code, read = run("--file", secure, "boxes")
    tell("a customer stored there is read again", holds=code == 0 and NAME in read)
    return [begun, read]


def refuses(run: Callable[..., tuple[int, str]], secure: str, port: int, folder: Path) -> list[str]:
    """Who is not let in, and what is said then; all of that."""
    said = []
    for why, address, words in (
        ("refused without TLS", f"postgresql://bench@localhost:{port}/shop?sslmode=disable", "no encryption"),
        ("refused where a stranger signed the certificate", secure.replace("ca.crt", "stranger.crt"), "verify failed"),
        ("refused where the certificate is for another name", secure.replace("@localhost", "@127.0.0.1"), "not match"),
    ):
        code, told = run("--file", address, "day")
        tell(why, holds=code == 1 and words in told and "Traceback" not in told)
        print(f"    {told.strip()}".replace(str(folder), "…"))
        said.append(told)
    return said


def main() -> None:
    """Print the table."""
    password = secrets.token_urlsafe(18)
    with set_up(password) as (server, wire, home):
        print(heading("tests.bench.server_tls", 0).replace("SQLite", f"PostgreSQL {server.version()} · SQLite"))
        keeps, wrong = home / "kept", home / "wrong"
        for file, word in ((keeps, password), (wrong, password[::-1])):
            file.touch(mode=0o600)
            file.write_text("".join(f"{host}:{wire.port}:*:bench:{word}\n" for host in ("localhost", "127.0.0.1")))
        watched = Watched()
        run = partial(watched.run, environment(home, PGPASSFILE=str(keeps)))
        secure = f"postgresql://bench@localhost:{wire.port}/shop?sslmode=verify-full&sslrootcert={server.folder}/ca.crt"

        said = lets_in(run, secure, home, password)
        said.append(typed(watched, environment(home), password, "--file", secure, "boxes"))
        tell("the same with the password typed where it is asked for", holds=NAME in said[-1])
        said += refuses(run, secure, wire.port, server.folder)
        code, told = watched.run(environment(home, PGPASSFILE=str(wrong)), "--file", secure, "day")
        tell("refused with a wrong password", holds=code == 1 and "did not let you in" in told)
        code, refused = Watched().run(environment(home), "--file", secure.replace("@", f":{password}@"), "day")
        tell("an address with the password in it is refused", holds=code != 0 and "~/.pgpass" in refused)
        searched(server, wire, home, password, [*said, told, refused])
        tell("nor in the command line or environment of any process of ours", holds=not watched.has(password))
        tell("    control: the name of the database's user is", holds=watched.has("bench@localhost"))
        _open_wire(wire, password)
    sys.exit(f"{len(FAILED)} did not hold" if FAILED else 0)


def _work(path: Path, address: str, password: str) -> None:
    """Store a customer, as a bench does."""
    point(path, address)
    keep_password(password)
    shop = open_shop(path)
    parcel(shop, name=NAME)
    ((secure, version),) = shop.database.rows("SELECT ssl, version FROM pg_stat_ssl WHERE pid = pg_backend_pid()")
    tell(f"the server says of the connection: {version}", holds=bool(secure) and str(version) >= "TLSv1.2")
    write_out(shop, path.with_name("all.jsonl"))
    close_shop(shop)


def searched(server: Server, wire: Wire, home: Path, password: str, shown: list[str]) -> None:
    """Look for the password and the customer wherever they may have been left."""
    log = server.log.read_text(errors="replace")
    everything = (home / "all.jsonl").read_text(encoding="utf-8")
    tell(f"{len(wire.passed):,} bytes on the way do not hold the customer's name", holds=not wire.has(NAME))
    tell("nor the password", holds=not wire.has(password))
    tell("the password is not in the shop, history and all", holds=password not in everything)
    tell("    control: the customer's name is", holds=NAME in everything)
    tell("nor in what the server keeps on its disk", holds=not found_in(server.data, password))
    tell("nor in its log, with every statement in it", holds=password not in log)
    tell("    control: the customer's name is", holds=NAME in log)
    kept = [name for name in found_in(home, password) if name != "kept"]
    tell("nor in any file of the person's but the one that keeps it", holds=not kept)
    tell("    control: that one is found", holds="kept" in found_in(home, password))
    tell("nor in anything that was shown or said", holds=not any(password in text for text in shown))


def _open_wire(wire: Wire, password: str) -> None:
    """The control: without TLS the same name is read on its way."""
    before = len(wire.passed)
    address = f"postgresql://bench@localhost:{wire.port}/open?sslmode=disable"
    with closing(psycopg.connect(address, password=password, autocommit=True)) as plain:
        plain.execute("SELECT %s", (NAME,))
    read = NAME.encode() in wire.passed[before:]
    tell("    control: without TLS the customer's name is read on the way", holds=read)


if __name__ == "__main__":
    main()
