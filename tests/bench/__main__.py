"""`python3 tests bench`: how fast it is on this machine, each figure beside what it may be.

Every file here whose name ends in `_bench.py` is a bench; with names only those are run (`python3 tests bench page`).
"""

import importlib
import sys
from pathlib import Path

BENCHES = [path.stem.removesuffix("_bench") for path in sorted(Path(__file__).parent.glob("*_bench.py"))]


def main(wanted: list[str]) -> int:
    """The worst exit status of the benches that were wanted."""
    unknown = [name for name in wanted if name not in BENCHES]
    if unknown:
        print(f"no bench is called {unknown[0]}: there are {', '.join(BENCHES)}", file=sys.stderr)
        return 2
    return max(importlib.import_module(f"{name}_bench").main() or 0 for name in wanted or BENCHES)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
