"""Joints of a frame; each cuts both of its members from one set of numbers."""
