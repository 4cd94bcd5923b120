"""Pieces of one's own: sums that name figures of the room, and rows of battens."""
