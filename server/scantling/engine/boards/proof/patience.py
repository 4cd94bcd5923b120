"""Patience: how long a check may go on. A proof made to be endless must end in "not confirmed", never in a hang."""


class OutOfPatience(Exception):
    """The check has not come to its end; it says nothing either way."""


class Patience:
    """A number of turns; `spend` takes some, and raises `OutOfPatience` when none is left."""

    __slots__ = ("_turns",)

    def __init__(self, turns: int) -> None:
        self._turns = turns

    def spend(self, turns: int = 1) -> None:
        self._turns -= turns
        if self._turns < 0:
            raise OutOfPatience
