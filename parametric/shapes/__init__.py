"""Shapes of a leaf's head, one a file: the curve, its heights and its lengths."""
