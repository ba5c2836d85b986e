"""Pictures of the set-ups of a machine that is run from files: what lies how, and what is cut."""
