"""One file per file format: bytes out, no decisions."""
