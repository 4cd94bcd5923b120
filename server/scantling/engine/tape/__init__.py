"""Tape: lengths as they are written, said, added and shown; other units at the edge; angles."""
