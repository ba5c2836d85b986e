"""Router work: set-ups, their operations, and what is left for the saw and the bench."""
