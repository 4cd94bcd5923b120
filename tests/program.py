"""`scantling …` in a process of its own, forked from one that has imported everything: a start takes a second else.

What begins with the interpreter (encodings, environment, how long a start takes) is tested by a start of its own.
"""

import contextlib
import multiprocessing
import os
import signal
import subprocess
import sys
import tempfile
import threading
from pathlib import Path

import pytest

NOBODY = 65534
READY = ["scantling.cli", "scantling.api", "scantling.serving", "scantling.demo_house", "encodings.idna", __name__]
FORKS = multiprocessing.get_context("forkserver")
FORKS.set_forkserver_preload(READY)

only_for_root = pytest.mark.skipif(
    os.name == "nt" or os.geteuid() != 0, reason="only root can step down to a user who may not"
)


class Program:
    """A running command, spoken to as to a `subprocess.Popen` whose outputs are texts."""

    def __init__(self, folder, *arguments, nobody=False):
        """`nobody`: as a user who owns nothing here; root, as which a container runs its tests, may do everything."""
        (out, out_end), (err, err_end) = FORKS.Pipe(duplex=False), FORKS.Pipe(duplex=False)
        command = ["--data", str(folder), *map(str, arguments)]
        self._process = FORKS.Process(target=_run, args=(command, out_end, err_end, nobody), daemon=True)
        self._process.start()
        self.pid = self._process.pid
        out_end.close()
        err_end.close()
        self.stdout, self.stderr = (os.fdopen(os.dup(end.fileno()), encoding="utf-8") for end in (out, err))

    @property
    def returncode(self):
        return self._process.exitcode

    def send_signal(self, number):
        if self._process.is_alive():
            with contextlib.suppress(ProcessLookupError):  # it may end between the look and the signal
                os.kill(self.pid, number)

    def terminate(self):
        self.send_signal(signal.SIGTERM)

    def kill(self):
        self.send_signal(signal.SIGKILL)

    def wait(self, timeout=None):
        self._process.join(timeout)
        if self._process.exitcode is None:
            raise subprocess.TimeoutExpired("scantling", timeout)
        return self._process.exitcode

    def communicate(self, timeout=None):
        """What it said until it ended, on standard output and on standard error."""
        said = {}
        readers = [threading.Thread(target=lambda end=end: said.update({end: end.read()}), daemon=True)
                   for end in (self.stdout, self.stderr) if not end.closed]  # fmt: skip
        for reader in readers:
            reader.start()
        self.wait(timeout)
        for reader in readers:
            reader.join(timeout)
        for end in (self.stdout, self.stderr):
            end.close()
        return said.get(self.stdout, ""), said.get(self.stderr, "")


def _run(command, out, err, nobody):
    os.dup2(out.fileno(), 1)
    os.dup2(err.fileno(), 2)
    from scantling.cli import main

    if nobody:
        _step_down()
    sys.exit(main(command))


def _step_down():
    """Everything that a notebook needs is imported before: the interpreter may lie where only root can read."""
    from scantling.store import open_store

    open_store(Path(tempfile.mkdtemp())).close()
    os.setgroups([])
    os.setegid(NOBODY)
    os.seteuid(NOBODY)


def run(folder, *arguments, nobody=False, timeout=60):
    """A command that ended: its exit status and what it said."""
    program = Program(folder, *arguments, nobody=nobody)
    out, err = program.communicate(timeout)
    return subprocess.CompletedProcess(arguments, program.returncode, out, err)


def run_as_nobody(folder, *arguments):
    return run(folder, *arguments, nobody=True)
