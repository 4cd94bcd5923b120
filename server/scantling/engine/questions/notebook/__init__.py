"""Questions about what was entered."""
