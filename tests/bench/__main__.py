"""`python3 tests bench`: how fast the page and the planner are on this machine, each figure beside what it may be.

python3 tests bench           everything
python3 tests bench page      only the page in the browser
python3 tests bench boards    only the board planner
"""

import importlib
import sys

BENCHES = {"page": "page_bench", "boards": "boards_bench"}


def main(wanted: list[str]) -> int:
    """The worst exit status of the benches that were wanted."""
    unknown = [name for name in wanted if name not in BENCHES]
    if unknown:
        print(f"no bench is called {unknown[0]}: there are {', '.join(BENCHES)}", file=sys.stderr)
        return 2
    return max(importlib.import_module(BENCHES[name]).main() or 0 for name in wanted or BENCHES)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
