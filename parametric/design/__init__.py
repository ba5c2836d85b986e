"""The design file and the house file: read, put in layers, understood."""
