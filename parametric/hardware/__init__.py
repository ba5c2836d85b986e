"""Hardware; each piece brings the cuts that it needs to the parts it mounts on."""
