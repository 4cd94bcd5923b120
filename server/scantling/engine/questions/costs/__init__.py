"""Questions about money."""
