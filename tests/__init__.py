"""Tests; they mirror the package, and outside/ holds it against things that are not ours."""
