"""The parts that the screens are put together from."""
