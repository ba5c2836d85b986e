"""Hinges and locks: their numbers by hand, their cuts as solids."""
