"""The shop's own numbers: shapes, reading and checking."""
