"""How far a page moves by itself, as the W3C's Layout Instability defines it."""

#: Before the page's own scripts. A shift within half a second of a touch is what the touch asked for.
WATCH_SHIFTS = """
globalThis.shifts = [];
new PerformanceObserver((list) => {
  for (const one of list.getEntries()) if (!one.hadRecentInput) shifts.push([one.startTime, one.value]);
}).observe({ type: "layout-shift", buffered: true });
"""


def worst_window(shifts: list[list[float]]) -> float:
    """The most that shifts come to in one burst: less than a second apart, and within five (web.dev, "Cumulative Layout
    Shift").

    >>> worst_window([[0, 0.01], [900, 0.02], [2500, 0.025]])
    0.03
    """
    windows: list[list[list[float]]] = []
    for shift in sorted(shifts):
        if windows and shift[0] - windows[-1][-1][0] < 1000 and shift[0] - windows[-1][0][0] < 5000:
            windows[-1].append(shift)
        else:
            windows.append([shift])
    return max((sum(amount for _, amount in window) for window in windows), default=0.0)
