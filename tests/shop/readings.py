"""Readings and tests written straight into a shop, as the test screen leaves them."""

from collections.abc import Mapping

from queueboard.records.edge_tables import EdgeTestRow, ReadingRow, SpotRow
from queueboard.records.instants import to_us
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor
from queueboard.values.knife import Knife


def read(
    shop: Shop,
    actor: Actor,
    knife: Knife,
    after: Mapping[str, int],
    before: Mapping[str, int] | None = None,
    *,
    ok: bool | None = True,
    deburred: bool = True,
) -> None:
    """A knife with its spots, read before and after, and tested a second later unless ok is None."""
    now_us = to_us(actor.now)
    with shop.writing(actor, "written straight") as writing:
        for place, spot in enumerate(after, 1):
            spot_id = writing.insert(SpotRow, knife_id=knife.id, place=place, name=spot, from_heel_mm=None, tooth=None)
            for stage, forces in (("before", before or {}), ("after", after)):
                if spot in forces:
                    writing.insert(
                        ReadingRow,
                        spot_id=spot_id,
                        stage=stage,
                        belt="",
                        deburred=int(deburred),
                        force_gf=forces[spot],
                        read_us=now_us,
                        read_by=actor.initials,
                        struck_us=None,
                        struck_why="",
                    )
        if ok is not None:
            writing.insert(
                EdgeTestRow, knife_id=knife.id, way="gauge", ok=int(ok), belt="", tested_us=now_us + 1, tested_by="J"
            )
