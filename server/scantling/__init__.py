"""Scantling: a room notebook for someone renovating their own house, one room at a time."""
