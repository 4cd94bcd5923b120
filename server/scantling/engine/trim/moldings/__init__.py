"""Moldings that run along walls, each named in a file of its own."""
