"""Lengths and quantities, read and printed."""
