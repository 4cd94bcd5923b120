"""Dressed: what is put on casing once that is worked out: blocks in its corners, a head built up, a band round it."""
