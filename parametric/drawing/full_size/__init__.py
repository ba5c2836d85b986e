"""Sheets at full size: the story stick and the templates, whole and in tiles for a plain printer."""
