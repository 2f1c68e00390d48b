"""Telling the Esc key from the beginning of what a terminal says with an Esc in front."""

import re
from collections.abc import Generator, Iterator

from queueboard.clean import without_commands

ESC = "\x1b"

_BEGINS_MORE = r"\[\]OPNX^_\\"
"""What follows an Esc in a sequence of a terminal (ECMA-48, 5.3: CSI, OSC, SS3, DCS, SS2, SOS, PM, APC, ST)."""

_PASTE_ENDS = f"{ESC}[201~"
_MET = re.compile(rf"(?P<paste>{ESC}\[200~)|(?P<alone>{ESC}(?=[^{_BEGINS_MORE}]))|(?P<unclear>{ESC}(?:\[\d{{0,3}})?\Z)")


class LoneEscapes:
    """Cuts what is read so that the Esc key stands alone, also when the next key came right behind it.

    A terminal says Alt+4 with the same two bytes as Esc and 4 pressed fast. The board has no keys with Alt, so they are
    two keys here. What is pasted goes on as text alone, in one piece: an Esc within it would be read as a key, and what
    stands behind it would scatter over other fields.
    """

    def __init__(self) -> None:
        self._held = ""
        self._pasting = False
        self._pasted = ""

    def take(self, text: str) -> Iterator[str]:
        """The parts of a text just read, in order; a part that is ESC is the key, others are for the parser."""
        text, self._held = self._held + text, ""
        while text:
            if self._pasting:
                text = yield from self._rest_of_paste(text)
                continue
            met = _MET.search(text)
            yield from filter(None, (text[: met.start()] if met else text,))
            if met is None:
                return
            if met["unclear"]:
                self._held = met["unclear"]
                return
            self._pasting = bool(met["paste"])
            yield met[0]
            text = text[met.end() :]

    def wait_is_over(self) -> Iterator[str]:
        """What was held back for a moment, since nothing came behind it."""
        held, self._held = self._held, ""
        yield from filter(None, (held,))

    def _rest_of_paste(self, text: str) -> Generator[str, None, str]:
        """Keep what is pasted until its end has come, then pass it on; what stands behind its end is the answer."""
        looked_at = max(0, len(self._pasted) - len(_PASTE_ENDS))
        self._pasted += text
        end = self._pasted.find(_PASTE_ENDS, looked_at)
        if end < 0:
            return ""
        pasted, behind = self._pasted[:end], self._pasted[end + len(_PASTE_ENDS) :]
        self._pasted, self._pasting = "", False
        yield without_commands(pasted) + _PASTE_ENDS
        return behind
