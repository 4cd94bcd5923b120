"""Serving: cheroot around the app, with limits, and a clean stop.

It knows sockets and signals, nothing of what is served. A connection that has said nothing waits in the selector and
costs no thread; cheroot by itself gives each new one a thread at once, and a dozen silent ones stop the service. What
is not HTTP at all, or has endless headers, cheroot refuses in its own words before the app hears of it.
"""

from __future__ import annotations

import contextlib
import logging
import signal
import threading
from collections.abc import Callable, Sequence
from queue import SimpleQueue
from types import FrameType
from typing import Any

from cheroot.wsgi import Server
from flask import Flask

from scantling.api.door import JOURNAL_BYTES

log = logging.getLogger(__name__)

THREADS = 8
WAITING = 64
SILENCE_SECONDS = 15
STOP_SECONDS = 3
HEADER_BYTES = 32_000
EVERYWHERE_OR_HERE = ("127.0.0.1", "::1", "0.0.0.0", "::")


class NotebookServer(Server):
    """cheroot with our limits."""

    def __init__(self, app: Flask, host: str, port: int) -> None:
        super().__init__(
            (host, port), app, numthreads=THREADS, max=THREADS, server_name="Scantling",
            request_queue_size=WAITING, timeout=SILENCE_SECONDS, shutdown_timeout=STOP_SECONDS,
        )  # fmt: skip
        self.max_request_header_size = HEADER_BYTES
        # Above the app's own limit, so that it is the app that refuses, in the one error body.
        self.max_request_body_size = JOURNAL_BYTES * 2
        self.keep_alive_conn_limit = WAITING

    def process_conn(self, conn: Any) -> None:
        if getattr(conn, "was_heard", False):
            super().process_conn(conn)
            return
        conn.was_heard = True
        self._connections.put(conn)  # type: ignore[attr-defined]  # cheroot makes it in prepare()

    def error_log(self, msg: str = "", level: int = logging.INFO, traceback: bool = False) -> None:
        # %r, or a line break in what a client sent would write a line of its own into the log.
        log.log(level, "%r", msg, exc_info=traceback)

    @property
    def port(self) -> int:
        """The port in truth: the one asked for, or the one the system chose for 0."""
        chosen: int = self.socket.getsockname()[1]
        return chosen


def serve(app: Flask, host: str, ports: Sequence[int], announce: Callable[[str], None]) -> None:
    """Serve until SIGTERM or SIGINT, on the first of the ports that is free; 0 is any.

    `announce` gets the address once requests are answered. Raises OSError when none of the ports can be had.
    """
    server = _listen(app, host, ports)
    signals: SimpleQueue[int] = SimpleQueue()
    _catch_signals(signals)
    stopper = threading.Thread(target=_stop_at_signal, args=(server, signals), daemon=True)
    stopper.start()
    announce(f"http://{'localhost' if host in EVERYWHERE_OR_HERE else host}:{server.port}")
    server.serve()
    stopper.join(STOP_SECONDS)


def _listen(app: Flask, host: str, ports: Sequence[int]) -> NotebookServer:
    for port in ports[:-1]:
        server = NotebookServer(app, host, port)
        with contextlib.suppress(OSError):
            server.prepare()
            return server
    server = NotebookServer(app, host, ports[-1])
    server.prepare()
    return server


def _stop_at_signal(server: NotebookServer, signals: SimpleQueue[int]) -> None:
    signals.get()
    server.stop()


def _catch_signals(signals: SimpleQueue[int]) -> None:
    # The handler only leaves a note: server.stop() waits for the very loop that the handler interrupts. The note goes
    # into the one queue that may be entered while it is being entered: an Event locks itself out at a second signal.
    def handle(number: int, _frame: FrameType | None) -> None:
        signals.put(number)

    for name in (signal.SIGINT, signal.SIGTERM):
        signal.signal(name, handle)
