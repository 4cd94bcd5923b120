"""`python3 demo`: the invented house, its cut list and its board plan, and the page at a printed address until stopped.

Everything it makes is in .env-scantling/ beside the checkout; your own notebook is not touched.
"""

import subprocess
import sys

from environment import FOLDER, prepare


def main(arguments: list[str]) -> int:
    """Run `scantling demo` in the project's environment; its exit status."""
    command = [prepare(), "-m", "scantling", "--data", FOLDER / "demo-notebook", "demo", *arguments]
    running = subprocess.Popen(command)
    while True:
        try:
            return running.wait()
        except KeyboardInterrupt:  # the server has heard it too, and stops by itself
            continue


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
