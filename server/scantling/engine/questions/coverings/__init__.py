"""Questions about what covers a room."""
