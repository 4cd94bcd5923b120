"""The visitor: under which name a request asks, from which page, and whether it may enter.

The host name is checked on loopback too: a page of another site can point its own name at 127.0.0.1 and would then read
the notebook. The names of loopback are answered to on loopback alone, since anybody on the network can write such a
name on a request. What a browser says of the page that asks (Origin, Sec-Fetch-Site) must be this very page; a program
says nothing of the kind, and no page can keep a browser from saying it. What a form can send is refused by its type
besides: an old browser sends a form without saying whose it is.

The page on the laptop itself needs nothing more. Every other device shows the token that it was paired with, in a
header: with no cookie there is nothing that a browser would send along for another site.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

import flask
from flask import Request, Response

from scantling.api.forwarded import BY_PROXY, REFUSAL, parse_address
from scantling.api.refusals import DoorError
from scantling.clock import now_ms
from scantling.engine.errors import quote
from scantling.households import Households
from scantling.lan.home import Home
from scantling.lan.pairing import PairingError

LOOPBACK_NAMES = frozenset({"localhost", "127.0.0.1", "[::1]"})
WRITES = frozenset({"POST", "PUT", "PATCH", "DELETE"})
FORM_TYPES = frozenset({"application/x-www-form-urlencoded", "multipart/form-data", "text/plain"})
ELSEWHERE = frozenset({"cross-site", "same-site"})
#: What a proxy writes. Without being told of one, a request that carries any of these is not the owner's, wherever it
#: comes from: behind a proxy on this machine the whole world comes from loopback.
PROXY_HEADERS = ("Forwarded", "Via", "X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "X-Real-IP")
PAIRING = ("POST", "/api/devices")
SHARED_METHODS = "GET, POST, PUT, DELETE"
SHARED_HEADERS = "Authorization, Content-Type, Content-Encoding, Idempotency-Key"


def is_loopback(address: str | None) -> bool:
    """Whether a connection comes from this machine itself."""
    found = parse_address(address)
    return found is not None and found.is_loopback


@dataclass(frozen=True, slots=True)
class Entrance:
    """What this server answers to. `origins` are pages elsewhere that a paired device may use."""

    names: tuple[str, ...] = ()
    home: Home | None = None
    origins: frozenset[str] = frozenset()
    behind_proxy: bool = False

    def check(self, request: Request) -> Response | None:
        """Let a request in, answer it (a browser's own question before a request), or refuse it. Raises DoorError."""
        self._check_proxy(request)
        self._check_host(request)
        flask.g.device, flask.g.laptop = None, None
        if not request.path.startswith("/api/"):
            return None
        self._check_origin(request)
        if self._is_shared(request) and request.method == "OPTIONS":
            return Response(status=204)
        if (request.method, request.path) == PAIRING:
            return None  # with no laptop: whose household it is, the code will say
        households: Households = flask.current_app.extensions["households"]
        if self._is_owner(request):
            flask.g.laptop = households.own
        else:
            flask.g.laptop, flask.g.device = households.recognize(_token(request), now_ms())
        return None

    def sharing(self, request: Request) -> Mapping[str, str]:
        """The headers by which a page of the allow-list may read an answer; none for any other."""
        if not self._is_shared(request):
            return {}
        return {
            "Access-Control-Allow-Origin": request.headers["Origin"],
            "Access-Control-Allow-Methods": SHARED_METHODS,
            "Access-Control-Allow-Headers": SHARED_HEADERS,
            "Access-Control-Max-Age": "600",
            "Vary": "Origin",
        }

    def _check_proxy(self, request: Request) -> None:
        """Behind a proxy, its words are heard from itself alone, and only where they are plain."""
        refusal: DoorError | None = request.environ.get(REFUSAL)
        if refusal:
            raise refusal
        if self.behind_proxy and not request.environ[BY_PROXY] and _is_forwarded(request):
            raise DoorError("through-a-proxy")

    def _check_host(self, request: Request) -> None:
        name = _name_of(request)
        own = {each.lower() for each in self.names} | (self.home.host_names if self.home else frozenset())
        if name not in own and not (name in LOOPBACK_NAMES and self._is_here(request)):
            raise DoorError("wrong-host", name=quote(request.environ.get("HTTP_HOST", "")))

    def _check_origin(self, request: Request) -> None:
        own = f"{request.scheme}://{request.environ.get('HTTP_HOST', '')}".lower()
        origin = request.headers.get("Origin")
        elsewhere = request.headers.get("Sec-Fetch-Site") in ELSEWHERE
        if ((origin is not None and origin.lower() != own) or elsewhere) and not self._is_shared(request):
            raise DoorError("wrong-origin", origin=quote(origin or "of another site"))
        if request.method in WRITES and request.mimetype in FORM_TYPES:
            raise DoorError("wrong-type", what=quote(request.mimetype))

    def _is_shared(self, request: Request) -> bool:
        return request.headers.get("Origin", "") in self.origins

    def _is_here(self, request: Request) -> bool:
        return request.environ.get(BY_PROXY, False) or is_loopback(request.remote_addr)

    def _is_owner(self, request: Request) -> bool:
        """The page on this machine, asked for by a name of loopback, with nothing between."""
        if self.behind_proxy or self._is_shared(request) or not is_loopback(request.remote_addr):
            return False
        if _name_of(request) not in LOOPBACK_NAMES:
            return False
        if _is_forwarded(request):
            raise DoorError("through-a-proxy")
        return True


def _is_forwarded(request: Request) -> bool:
    return any(header in request.headers for header in PROXY_HEADERS)


def _name_of(request: Request) -> str:
    return re.sub(r":\d{1,5}\Z", "", request.environ.get("HTTP_HOST", "")).lower()


def _token(request: Request) -> str:
    scheme, _, token = request.headers.get("Authorization", "").partition(" ")
    if scheme.lower() != "bearer" or not token.strip():
        raise PairingError("not-paired")
    return token.strip()
