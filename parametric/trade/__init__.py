"""Resolved and Parts -> loads and lists."""
