"""What came in: a typed line read as knives."""
