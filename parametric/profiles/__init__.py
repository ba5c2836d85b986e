"""Mouldings, one a file: an outline of wood taken away along an edge, and its sizes."""
