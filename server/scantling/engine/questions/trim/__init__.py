"""Questions about one joint, opening or row, without a room."""
