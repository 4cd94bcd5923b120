"""The threads that requests are answered in: a fixed few, made when first needed.

They are daemons. The interpreter waits at its end for the threads of concurrent.futures' own pool, so that one long
plan would hold up the stop of the whole program. What these do can be cut off: nothing is acknowledged before it is
kept.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Executor, Future
from queue import SimpleQueue
from threading import Lock, Thread
from typing import Any, ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")


class Hands(Executor):
    """An executor of at most `count` daemon threads."""

    def __init__(self, count: int) -> None:
        self._count = count
        self._waiting: SimpleQueue[Callable[[], None]] = SimpleQueue()
        self._threads: list[Thread] = []
        self._hiring = Lock()

    def submit(self, fn: Callable[P, T], /, *args: P.args, **kwargs: P.kwargs) -> Future[T]:
        future: Future[T] = Future()
        self._waiting.put(lambda: _do(future, lambda: fn(*args, **kwargs)))
        with self._hiring:
            if len(self._threads) < self._count:
                self._threads.append(Thread(target=self._work, daemon=True))
                self._threads[-1].start()
        return future

    def _work(self) -> None:
        while True:
            self._waiting.get()()


def _do(future: Future[Any], work: Callable[[], Any]) -> None:
    if not future.set_running_or_notify_cancel():
        return
    try:
        result = work()
    except BaseException as error:
        future.set_exception(error)
    else:
        future.set_result(result)
