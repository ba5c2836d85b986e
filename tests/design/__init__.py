"""The design file and the house file, read as a maker writes them."""
