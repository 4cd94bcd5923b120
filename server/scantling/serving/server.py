"""One address served, plain or by TLS, on a thread and an event loop of its own.

Connections that are silent, slow or in the middle of a TLS handshake wait in the event loop and cost no thread.
"""

from __future__ import annotations

import asyncio
import logging
import socket
import ssl
from collections.abc import Callable
from typing import Any

import uvicorn

from scantling.serving.hands import Hands
from scantling.serving.intake import Intake, PromptProtocol

THREADS = 16
WAITING = 256
CONNECTIONS = 500
IDLE_SECONDS = 15
#: What is being answered gets this long when the server stops; what is longer at it has promised nothing yet.
GRACE_SECONDS = 1
HEADER_BYTES = 32_000


class NotebookServer:
    """`prepare()` takes the address, `serve()` answers there until `stop()`, which may come from any thread."""

    def __init__(
        self,
        app: Callable[..., Any],
        host: str,
        port: int,
        tls: ssl.SSLContext | None = None,
        hands: Hands | None = None,
    ) -> None:
        self.scheme = "https" if tls else "http"
        self._address = (host, port)
        self._socket: socket.socket | None = None
        _keep_quiet()
        config = uvicorn.Config(
            Intake(app, hands or Hands(THREADS)), http=PromptProtocol, ws="none", lifespan="off", loop="asyncio",
            log_config=None, access_log=False, server_header=False, limit_concurrency=CONNECTIONS, backlog=WAITING,
            # Never by itself: who asks would be read off a header that anybody can write.
            proxy_headers=False,
            timeout_keep_alive=IDLE_SECONDS, timeout_graceful_shutdown=GRACE_SECONDS,
            h11_max_incomplete_event_size=HEADER_BYTES,
            ssl_context_factory=(lambda _config, _default: tls) if tls else None,
        )  # fmt: skip
        self._server = uvicorn.Server(config)

    @property
    def wanted_port(self) -> int:
        return self._address[1]

    def prepare(self) -> None:
        """Take the address. Raises OSError when another program has it."""
        host, port = self._address
        family = socket.AF_INET6 if ":" in host else socket.AF_INET
        self._socket = socket.create_server((host, port), family=family, backlog=WAITING)
        # Handed down to each connection. asyncio sets it only where a socket names its protocol, which this one does
        # not; without it the second part of every answer waits 40 ms for the first to be acknowledged.
        self._socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)

    @property
    def port(self) -> int:
        """The port in truth: the one asked for, or the one the system chose for 0."""
        assert self._socket is not None, "prepare() comes first"
        chosen: int = self._socket.getsockname()[1]
        return chosen

    def serve(self) -> None:
        assert self._socket is not None, "prepare() comes first"
        try:
            asyncio.run(self._serve())
        finally:
            self._socket.close()

    def stop(self) -> None:
        self._server.should_exit = True

    async def _serve(self) -> None:
        await self._server.serve(sockets=[self._socket] if self._socket else None)
        # uvicorn knows of a connection once its TLS handshake is done, and forgets it when its farewell begins.
        for transport in list(getattr(asyncio.get_running_loop(), "_transports", {}).values()):
            if not transport.is_closing() or transport.get_write_buffer_size():  # one that is gone bears no abort
                transport.abort()
        await asyncio.sleep(0)


def _keep_quiet() -> None:
    """uvicorn's own words: what a stranger sends, and what a stop cuts off, is nothing for a person to read."""
    log = logging.getLogger("uvicorn.error")
    if not log.filters:
        log.addFilter(_is_ours)
    log.setLevel(logging.ERROR)


def _is_ours(record: logging.LogRecord) -> bool:
    kind = record.exc_info[0] if record.exc_info else None
    return not str(record.msg).startswith("Cancel ") and kind is not asyncio.CancelledError
