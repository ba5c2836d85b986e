"""What fills a frame's openings."""
