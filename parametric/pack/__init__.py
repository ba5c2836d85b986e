"""One job pack: which outputs go in which folder, written aside and moved into place."""
