"""Packs read back: sound ones pass, and each seeded fault is found and named."""
