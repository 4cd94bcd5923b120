"""The plain page that helps a phone to trust this laptop's authority, and says what that means and how to end it.

It goes over plain HTTP, because a phone that does not trust the authority yet can read nothing else, and it holds
nothing of the house: steps, the authority's public certificate, and the fingerprint to compare with the laptop's
screen.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import flask
from flask import Flask, Response, render_template

from scantling.lan.authority import Authority
from scantling.lan.code import code_path
from scantling.lan.identity import Identity

TEMPLATES = Path(__file__).parent / "templates"
CERTIFICATE = "/scantling.crt"
#: With any other type an iPhone offers no installation.
CERTIFICATE_TYPE = "application/x-x509-ca-cert"
HEADERS = {
    "Content-Security-Policy": "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cache-Control": "no-store",
}
KINDS = {"iphone": re.compile("iPhone|iPad|iPod"), "android": re.compile("Android")}


def create_trust_app(identity: Identity, authority: Authority, names: Callable[[], frozenset[str]]) -> Flask:
    """The page as an app. `names` are the host names that it answers to at the moment."""
    app = Flask("scantling trust", static_folder=None, template_folder=str(TEMPLATES))

    @app.before_request
    def check_host() -> None:
        host = flask.request.environ.get("HTTP_HOST", "")
        if re.sub(r":\d{1,5}\Z", "", host).lower() not in names():
            flask.abort(421)

    @app.after_request
    def mark(response: Response) -> Response:
        response.headers.update(HEADERS)
        return response

    @app.get("/")
    def read_page() -> str:
        seen = flask.request.headers.get("User-Agent", "")
        kind = next((name for name, pattern in KINDS.items() if pattern.search(seen)), "other")
        return render_template(
            "trust.html", origin=identity.origin, name=identity.name, certificate=CERTIFICATE, kind=kind,
            fingerprint=authority.fingerprint, code=code_path(identity.trust_address),
            ends=f"{authority.certificate.not_valid_after_utc:%B %Y}", called=_called(authority),
        )  # fmt: skip

    @app.get(CERTIFICATE)
    def read_certificate() -> Response:
        return Response(authority.der, content_type=CERTIFICATE_TYPE)

    @app.get("/trust.css")
    def read_style() -> Response:
        return Response((TEMPLATES / "trust.css").read_bytes(), content_type="text/css; charset=utf-8")

    return app


def _called(authority: Authority) -> str:
    """The name under which a phone lists it."""
    return authority.certificate.subject.rfc4514_string().partition("CN=")[2].partition(",")[0]
