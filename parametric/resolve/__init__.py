"""Spec + Shop -> Resolved: every number a Figure, no choice left."""
