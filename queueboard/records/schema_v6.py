"""Schema version 6: what finding among ten years of boxes that are gone goes by, and what a knife is charged for."""

SQL = """
CREATE INDEX box_gone ON box(closed_us, id) WHERE closed_us IS NOT NULL;
CREATE INDEX box_gone_number ON box(number, closed_us, id) WHERE closed_us IS NOT NULL;
CREATE INDEX charge_knife ON charge(knife_id) WHERE knife_id IS NOT NULL;
"""
