"""Is it sharp: readings of the push an edge needs to cut, in grams-force (gf), and what they do and do not show."""
