"""Approving a design, and saying what moved since."""
