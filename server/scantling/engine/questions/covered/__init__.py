"""Questions about what covers a room of the notebook, from what was said of it."""
