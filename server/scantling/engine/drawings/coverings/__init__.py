"""Drawings of what covers: layouts on a roll or a sheet, and the strips of a wall."""
