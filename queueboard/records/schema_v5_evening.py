"""Schema version 5, the evening: what was looked at when a day was closed."""

SQL = """
"""
