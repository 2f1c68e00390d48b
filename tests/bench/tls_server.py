"""A PostgreSQL of our own with TLS, certificates made for it, and a wire to it that keeps what passes."""

import shutil
import socket
import subprocess
import threading
from contextlib import closing, suppress
from pathlib import Path

import psycopg

USER = "postgres"
"""Whom Debian runs the server as; it refuses to run as root."""

RULES = """
local     all  all                   trust
hostssl   shop bench  127.0.0.1/32   scram-sha-256
hostnossl open bench  127.0.0.1/32   scram-sha-256
"""
"""The shop by TLS alone; another database without, as a control."""

LOG = "log_statement=all log_connections=on log_disconnections=on log_min_messages=debug1 log_parameter_max_length=-1"


class Server:
    """A server of our own for as long as the script runs."""

    def __init__(self, folder: Path, password: str) -> None:
        self.folder, self.log = folder, folder / "log"
        newest = sorted(Path("/usr/lib/postgresql").glob("*/bin"))
        if not newest:
            raise SystemExit("PostgreSQL is not here: apt install postgresql")
        self.programs = newest[-1]
        with socket.create_server(("127.0.0.1", 0)) as free:
            self.port = free.getsockname()[1]
        self.data = folder / "data"
        folder.chmod(0o755)
        certificates(folder)
        shutil.chown(folder, USER)
        self._as("initdb", "-D", self.data, "-A", "trust", "-E", "UTF8", "--no-sync")
        for name in ("server.crt", "server.key"):
            shutil.copy(folder / name, self.data)
            shutil.chown(self.data / name, USER)
        (self.data / "server.key").chmod(0o600)
        (self.data / "pg_hba.conf").write_text(RULES)
        asked = ["ssl=on", f"port={self.port}", "listen_addresses=127.0.0.1", f"unix_socket_directories={folder}"]
        options = " ".join(f"-c {one}" for one in (*asked, "fsync=off", *LOG.split()))
        self._as("pg_ctl", "-D", self.data, "-l", self.log, "-o", options, "-w", "start")
        with closing(self._ruling()) as ruling:
            # The verifier, as createuser --pwprompt sends it: the server itself never hears the password.
            hashed = ruling.pgconn.encrypt_password(password.encode(), b"bench", b"scram-sha-256").decode()
            ruling.execute(f"CREATE ROLE bench LOGIN PASSWORD '{hashed}'")
            for name in ("shop", "open"):
                ruling.execute(f"CREATE DATABASE {name} OWNER bench")

    def _as(self, program: str, *arguments: object) -> None:
        words = [str(self.programs / program), *map(str, arguments)]
        subprocess.run(["runuser", "-u", USER, "--", *words], check=True, stdout=subprocess.DEVNULL, cwd="/")

    def _ruling(self) -> "psycopg.Connection[tuple[object, ...]]":
        by = f"host={self.folder} port={self.port} user={USER} dbname=postgres"
        return psycopg.connect(by, autocommit=True)

    def version(self) -> str:
        """As the server says it."""
        with closing(self._ruling()) as ruling:
            return str(ruling.info.parameter_status("server_version"))

    def stop(self) -> None:
        """Stop it."""
        self._as("pg_ctl", "-D", self.data, "-m", "fast", "stop")


def certificates(folder: Path) -> None:
    """An authority of our own, the server's certificate for `localhost` by it, and an authority nobody knows."""

    def openssl(*words: object) -> None:
        subprocess.run(["openssl", *map(str, words)], check=True, capture_output=True, cwd=folder)

    for name in ("ca", "stranger"):
        openssl(
            *("req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", 2, "-subj", f"/CN={name}"),
            *("-keyout", f"{name}.key", "-out", f"{name}.crt"),
        )
    openssl(
        *("req", "-newkey", "rsa:2048", "-nodes", "-subj", "/CN=localhost"),
        *("-keyout", "server.key", "-out", "server.csr"),
    )
    (folder / "names").write_text("subjectAltName=DNS:localhost\n")
    openssl(
        *("x509", "-req", "-in", "server.csr", "-CA", "ca.crt", "-CAkey", "ca.key", "-CAcreateserial"),
        *("-days", 2, "-extfile", "names", "-out", "server.crt"),
    )


class Wire:
    """Hands on what passes between a program and the server, and keeps it."""

    def __init__(self, port: int) -> None:
        self.passed = bytearray()
        self.to = port
        self.door = socket.create_server(("127.0.0.1", 0))
        self.port = self.door.getsockname()[1]
        threading.Thread(target=self._serve, daemon=True).start()

    def _serve(self) -> None:
        with suppress(OSError):
            while True:
                near, _ = self.door.accept()
                far = socket.create_connection(("127.0.0.1", self.to))
                for one, other in ((near, far), (far, near)):
                    threading.Thread(target=self._hand_on, args=(one, other), daemon=True).start()

    def _hand_on(self, one: socket.socket, other: socket.socket) -> None:
        with suppress(OSError):
            while portion := one.recv(65536):
                self.passed += portion
                other.sendall(portion)
            other.shutdown(socket.SHUT_WR)

    def has(self, word: str) -> bool:
        """True when the word passed as it is."""
        return word.encode() in self.passed
