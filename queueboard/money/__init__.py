"""What it costs: prices by the shop's list, what a box comes to, whole cents."""
