"""Runs: where a molding goes along a wall, in what order it is put up, and what its ends give."""
