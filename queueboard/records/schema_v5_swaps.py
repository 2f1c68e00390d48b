"""Schema version 5, swap sets of kitchens and tags printed before a market day."""

SQL = """
"""
