"""Questions about the order of work."""
