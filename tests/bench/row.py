"""One line of a bench table."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: what was measured, how much it was, and how much it may be or must be."""

    what: str
    figure: float
    unit: str
    at_most: float | None = None
    at_least: float | None = None

    @property
    def verdict(self) -> str:
        if self.at_most is None and self.at_least is None:
            return ""
        too_much = self.at_most is not None and self.figure > self.at_most
        too_little = self.at_least is not None and self.figure < self.at_least
        return "MISSED" if too_much or too_little else "ok"

    def show(self) -> None:
        target = "" if self.at_most is None else f"at most {self.at_most:g}"
        target = target if self.at_least is None else f"at least {self.at_least:g}"
        print(f"{self.what:<58}{self.figure:>10.1f} {self.unit:<4}{target:<16}{self.verdict}", flush=True)
