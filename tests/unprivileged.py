"""The command line as a user who owns nothing here: root, as which a container runs its tests, may do everything."""

import os
import subprocess
import sys

import pytest

NOBODY = 65534
#: Everything is imported first: the interpreter itself may lie where only root can read.
AS_NOBODY = f"""
import encodings.idna, os, sys, tempfile, shutil
from pathlib import Path
import scantling.api, scantling.serving, scantling.demo_house
from scantling.cli import main
from scantling.store import open_store
open_store(Path(tempfile.mkdtemp())).close()
os.setgroups([]), os.setegid({NOBODY}), os.seteuid({NOBODY})
sys.exit(main(sys.argv[1:]))
"""
only_for_root = pytest.mark.skipif(
    os.name == "nt" or os.geteuid() != 0, reason="only root can step down to a user who may not"
)


def command_of_nobody(folder, *arguments):
    return [sys.executable, "-c", AS_NOBODY, "--data", str(folder), *map(str, arguments)]


def run_as_nobody(folder, *arguments):
    """The finished process; its output as text."""
    return subprocess.run(
        command_of_nobody(folder, *arguments), capture_output=True, text=True, check=False, timeout=60
    )
