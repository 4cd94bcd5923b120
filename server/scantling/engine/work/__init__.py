"""The order of work in a room, and what a step upstream puts in doubt."""
