"""Questions about a room as it was read."""
