"""The app: one blueprint per noun, the door in front, the page beside it."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from flask import Flask

from scantling.api import reference
from scantling.api.door import guard
from scantling.api.forwarded import ForwardedFix, Network
from scantling.api.nouns import NOUNS
from scantling.api.reference import build_api
from scantling.api.visitor import Entrance
from scantling.households import Households
from scantling.lan.home import Home
from scantling.site import Site
from scantling.store import Database


@dataclass(frozen=True, slots=True)
class Config:
    """What an app needs to know.

    `names` are the host names it answers to besides loopback's, `home` the laptop on its network, `origins` the pages
    elsewhere that paired devices may use, `proxies` where a proxy asks from that says who asked it, `beside` the folder
    for attachments where the journal is in a database.
    """

    data: Path | Database
    names: tuple[str, ...] = ()
    site: Site = field(default_factory=Site)
    home: Home | None = None
    origins: tuple[str, ...] = ()
    proxies: tuple[Network, ...] = ()
    beside: Path | None = None


def create_app(config: Config) -> Flask:
    """The app on an opened notebook. Raises StoreError when the folder cannot be used."""
    app = Flask("scantling", static_folder=None)
    households = Households(config.data, config.beside)
    app.extensions.update(households=households, scantling=households.own)
    app.config["BUILD"] = config.site.build
    app.config["HOME"] = config.home
    api = build_api(app)
    for noun in NOUNS:
        api.register_blueprint(noun.blueprint)
    app.register_blueprint(reference.blueprint)
    app.register_blueprint(config.site.blueprint())
    guard(app, Entrance(config.names, config.home, frozenset(config.origins), bool(config.proxies)))
    if config.proxies:
        app.wsgi_app = ForwardedFix(app.wsgi_app, config.proxies)  # type: ignore[method-assign]
    return app
