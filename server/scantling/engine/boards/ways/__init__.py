"""Ways: what can come out of one board."""
