"""Cases and what goes into them, one kind a file: its block as written, its sizes, its cuts."""
