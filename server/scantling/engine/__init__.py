"""The engine: readings in, figures with their working out. Pure Python, the same files on phone and laptop.

It knows no clock, no disk, no network, no chance: ask it through `desk` and nothing else.
"""
