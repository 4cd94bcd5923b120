"""The intake: a request is taken whole before a thread is given to it, and in a time of its own.

Eight senders of a byte a second would otherwise hold eight threads for hours. `PromptProtocol` ends a connection that
has not brought its whole request in time, first line, headers and body together; what is not HTTP is refused by h11 in
its own words. `Intake` keeps the body in memory, all bodies together up to a bound, and hands the request to the app.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, MutableMapping
from concurrent.futures import Executor
from typing import Any
from urllib.parse import quote_from_bytes

import h11
from a2wsgi.wsgi import WSGIResponder
from uvicorn.protocols.http.h11_impl import H11Protocol

REQUEST_SECONDS = 20.0
#: A journal of the largest size that is taken, on a slow network.
LARGE_SECONDS = 300.0
LARGE_BYTES = 100_000
#: Above the app's own limit, so that it is the app that refuses, in the one error body.
BODY_BYTES = 128_000_000
BODIES_BYTES = 256_000_000
#: What stands for itself in a query: RFC 3986, section 3.4, and the sign of what is escaped already.
QUERY_SIGNS = "/?:@!$&'()*+,;=~%"
ANSWERS_AHEAD = 8

Message = MutableMapping[str, Any]


class PromptProtocol(H11Protocol):
    """uvicorn's connection, ended when a whole request takes longer than its time."""

    _deadline: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        self._deadline = self.loop.call_later(REQUEST_SECONDS, self._end)

    def connection_lost(self, exc: Exception | None) -> None:
        self._stop_waiting()
        super().connection_lost(exc)

    def data_received(self, data: bytes) -> None:
        if self._deadline is None and self._between_requests():
            self._deadline = self.loop.call_later(REQUEST_SECONDS, self._end)
        try:
            super().data_received(data)
        except UnicodeDecodeError:  # a first line in letters that no address has
            self.send_400_response("Invalid HTTP request received.")
        if self._deadline is not None and not self._between_requests() and self.conn.their_state is h11.SEND_BODY:
            self._allow_for_length()
        if self.conn.their_state in (h11.DONE, h11.MUST_CLOSE, h11.CLOSED, h11.ERROR):
            self._stop_waiting()

    def _between_requests(self) -> bool:
        return self.cycle is None or self.cycle.response_complete

    def _allow_for_length(self) -> None:
        """Once, when the headers are whole: a large body gets a longer time, and that is fixed then."""
        length = next((value for name, value in self.headers if name == b"content-length"), b"0")
        if getattr(self.cycle, "timed", False) or not length.isdigit() or int(length) < LARGE_BYTES:
            return
        self.cycle.timed = True  # type: ignore[attr-defined]
        self._stop_waiting()
        self._deadline = self.loop.call_later(LARGE_SECONDS, self._end)

    def _stop_waiting(self) -> None:
        if self._deadline is not None:
            self._deadline.cancel()
            self._deadline = None

    def _end(self) -> None:
        self.transport.abort()


class Responder(WSGIResponder):
    """a2wsgi's way from a thread back to the loop, which may have been closed meanwhile by a stop."""

    def send(self, message: Any) -> None:
        putting = self.send_queue.put(message)
        try:
            sent = asyncio.run_coroutine_threadsafe(putting, self.loop)
        except RuntimeError as error:
            putting.close()  # or Python writes that nobody waited for it
            raise ConnectionAbortedError("the server has stopped") from error
        sent.result()


class Intake:
    """A WSGI app as an ASGI app that is called with whole requests alone."""

    def __init__(self, app: Callable[..., Any], hands: Executor) -> None:
        self._app = app
        self._hands = hands
        self._held = 0

    async def __call__(self, scope: Message, receive: Callable[[], Any], send: Callable[[Message], Any]) -> None:
        if scope["type"] != "http":
            return
        body = bytearray()
        try:
            if not await self._take(receive, body):
                return
            await Responder(self._app, self._hands, ANSWERS_AHEAD)(_plain(scope), _once(body), send)  # type: ignore[arg-type]
        finally:
            self._held -= len(body)

    async def _take(self, receive: Callable[[], Any], body: bytearray) -> bool:
        """Fill the body; False when the sender went away. One that is too large is left where it stands."""
        while True:
            message = await receive()
            if message["type"] != "http.request":
                return False
            piece = message.get("body", b"")
            if len(body) + len(piece) > BODY_BYTES or self._held + len(piece) > BODIES_BYTES:
                return True
            body += piece
            self._held += len(piece)
            if not message.get("more_body", False):
                return True


def _plain(scope: Message) -> Message:
    """The request without what WSGI cannot tell apart or cannot carry.

    X_Forwarded_For would arrive under the name of X-Forwarded-For, past a proxy that watches the second alone.
    """
    headers = [(name, value) for name, value in scope["headers"] if b"_" not in name]
    query = quote_from_bytes(scope["query_string"], QUERY_SIGNS).encode()
    return {**scope, "headers": headers, "query_string": query}


def _once(body: bytearray) -> Callable[[], Any]:
    async def receive() -> Message:
        return {"type": "http.request", "body": bytes(body), "more_body": False}

    return receive
