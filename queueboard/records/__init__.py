"""What is known: the shop file. Only the shop room may come in here."""
