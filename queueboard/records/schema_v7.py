"""Schema version 7: how a box left, who owes, what waits and what came on a day, without a look at ten years of each.

Whoever asks for those who owe writes what was paid out, 'paid', as the index does: else SQLite would not use it.
"""

SQL = """
CREATE INDEX close_out_box ON close_out(box_id);
CREATE INDEX close_out_owing ON close_out(box_id) WHERE finished_us IS NOT NULL AND settled <> 'paid';
CREATE INDEX box_waiting ON box(id) WHERE waiting_for IS NOT NULL;
CREATE INDEX box_received ON box(received_us);
"""
