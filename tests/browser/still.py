"""How far a page moves by itself, as the W3C's Layout Instability defines it."""

#: Before the page's own scripts. A shift within half a second of a touch is what the touch asked for.
WATCH_SHIFTS = """
globalThis.shifts = [];
new PerformanceObserver((list) => {
  for (const one of list.getEntries()) if (!one.hadRecentInput) shifts.push([one.startTime, one.value]);
}).observe({ type: "layout-shift", buffered: true });
"""

#: Since when the engine owes no answer.
WATCH_ENGINE = """
globalThis.silent = 0;
globalThis.Worker = class extends Worker {
  constructor(...of) {
    super(...of);
    this.addEventListener("message", () => { globalThis.silent = performance.now(); });
  }
  postMessage(message) {
    globalThis.silent = Infinity;
    super.postMessage(message);
  }
};
"""
#: In the engine's place the laptop's own, whose answers are the same to the byte and cost no start of a Python. It
#: wakes when something is painted and the rest of the page has come, and takes its time over each answer.
LAPTOPS_ENGINE = """
globalThis.silent = 0;
globalThis.Worker = class {
  postMessage({ boot, id, ask }) {
    globalThis.silent = Infinity;
    const say = (data, late) => setTimeout(() => {
      globalThis.silent = performance.now();
      this.onmessage({ data });
    }, late);
    if (boot) {
      new PerformanceObserver((list) => {
        if (list.getEntriesByName("first-contentful-paint").length) say({ awake: boot.build, from: "restored" }, 400);
      }).observe({ type: "paint", buffered: true });
    } else if (JSON.parse(ask).ask === "take") {
      say({ id, answer: "{}" }, 100);
    } else {
      fetch("/api/ask", { method: "POST", headers: { "Content-Type": "application/json" }, body: ask })
        .then((reply) => reply.text()).then((answer) => say({ id, answer }, 100));
    }
  }
  terminate() {}
};
"""
#: Whether it has owed none for so long, in ms.
SILENT = "(long) => performance.now() - silent > long"


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
