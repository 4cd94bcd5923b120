"""Serving: sockets, threads and signals around an app, and nothing of what is served.

    intake    a request is taken whole, within a time, before any thread is given to it
    hands     the threads that requests are answered in, which keep no stop waiting
    server    one address served, plain or by TLS
    running   several addresses served until a signal
"""

from scantling.serving.running import serve
from scantling.serving.server import NotebookServer

__all__ = ["NotebookServer", "serve"]
