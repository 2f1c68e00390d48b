"""Which minutes are there: hours, closures, holidays, and bench minutes turned into clock time."""
