"""The walk: what there is to read of a room, in walking order, and what was read of it."""
