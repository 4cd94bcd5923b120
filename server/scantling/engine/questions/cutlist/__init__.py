"""Questions about the pieces of a room."""
