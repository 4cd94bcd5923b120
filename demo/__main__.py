"""`python3 demo`: the invented house, its cut list and its board plan, and the page at a printed address until stopped.

Everything it makes is in .env-scantling/ beside the checkout; your own notebook is not touched.
"""

import os
import subprocess
import sys

from environment import FOLDER, prepare


def main(arguments: list[str]) -> None:
    """Become `scantling demo` in the project's environment."""
    command = [str(prepare()), "-m", "scantling", "--data", str(FOLDER / "demo-notebook"), "demo", *arguments]
    if os.name == "nt":
        sys.exit(subprocess.run(command, check=False).returncode)
    # In its place and not beneath it: a signal to stop would else reach only the one who waits for the server.
    sys.stdout.flush()
    os.execv(command[0], command)


if __name__ == "__main__":
    main(sys.argv[1:])
