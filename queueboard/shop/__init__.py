"""What a person can do, and the one picture of the shop."""
