"""Queueboard: the terminal board that runs the day of a small knife-sharpening shop."""
