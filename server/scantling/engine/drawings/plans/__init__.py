"""The plan of a room from above: plain, or whole with its pieces lettered, and where there is room for a label."""
