"""What goes to site and stays there: install sheets, the delivery list, the care sheet."""
