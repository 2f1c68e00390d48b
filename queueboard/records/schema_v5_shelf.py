"""Schema version 5, the shelf: where a box stands, notices to customers, call-backs."""

SQL = """
"""
