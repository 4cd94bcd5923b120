"""Several addresses served until a signal. The main thread does nothing but wait for it, so it is heard at once."""

from __future__ import annotations

import contextlib
import signal
import threading
from collections.abc import Callable, Sequence
from queue import Empty, SimpleQueue
from types import FrameType
from typing import Any

from scantling.serving.server import NotebookServer

STOP_SECONDS = 2.5
LOOK_SECONDS = 0.5
EVERYWHERE_OR_HERE = ("127.0.0.1", "::1", "0.0.0.0", "::")


def serve(
    app: Callable[..., Any], host: str, ports: Sequence[int], announce: Callable[[str], None],
    beside: Sequence[NotebookServer] = (),
) -> None:  # fmt: skip
    """Serve until SIGTERM or SIGINT, on the first of the ports that is free; 0 is any. `beside` are prepared servers.

    `announce` gets the address once requests are answered. Raises OSError when none of the ports can be had.
    """
    server = _listen(app, host, ports)
    signals: SimpleQueue[int] = SimpleQueue()
    _catch_signals(signals)
    threads = [threading.Thread(target=each.serve, daemon=True) for each in (server, *beside)]
    for thread in threads:
        thread.start()
    announce(f"http://{'localhost' if host in EVERYWHERE_OR_HERE else host}:{server.port}")
    _wait(signals)
    for each in (server, *beside):
        each.stop()
    for thread in threads:
        thread.join(STOP_SECONDS)


def _wait(signals: SimpleQueue[int]) -> None:
    """Until there is a signal. One that comes just as the wait begins is noted when the interpreter looks next: in a
    wait without an end it never would."""
    while True:
        with contextlib.suppress(Empty):
            signals.get(timeout=LOOK_SECONDS)
            return


def _listen(app: Callable[..., Any], host: str, ports: Sequence[int]) -> NotebookServer:
    for port in ports[:-1]:
        server = NotebookServer(app, host, port)
        with contextlib.suppress(OSError):
            server.prepare()
            return server
    server = NotebookServer(app, host, ports[-1])
    server.prepare()
    return server


def _catch_signals(signals: SimpleQueue[int]) -> None:
    # The note goes into the one queue that may be entered while it is being entered: an Event locks itself out at a
    # second signal.
    def handle(number: int, _frame: FrameType | None) -> None:
        signals.put(number)

    for name in (signal.SIGINT, signal.SIGTERM):
        signal.signal(name, handle)
