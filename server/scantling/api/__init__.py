"""The app: one blueprint per noun, the door in front, the page beside it."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from flask import Flask

from scantling.api import ask, houses, journal, pieces, readings, reference, rooms, sync
from scantling.api.door import guard
from scantling.api.reference import build_api, describe_questions
from scantling.laptop import Laptop
from scantling.site import Site
from scantling.store import open_store

NOUNS = (ask, houses, rooms, readings, pieces, journal, sync)


@dataclass(frozen=True, slots=True)
class Config:
    """What an app needs to know: the notebook's folder, the host names it answers to besides loopback, and the page."""

    data: Path
    names: tuple[str, ...] = ()
    site: Site = field(default_factory=Site)


def create_app(config: Config) -> Flask:
    """The app on an opened notebook. Raises StoreError when the folder cannot be used."""
    app = Flask("scantling", static_folder=None)
    app.extensions["scantling"] = Laptop(open_store(config.data))
    app.config["BUILD"] = config.site.build
    api = build_api(app)
    for noun in NOUNS:
        api.register_blueprint(noun.blueprint)
    describe_questions(api)
    app.register_blueprint(reference.blueprint)
    app.register_blueprint(config.site.blueprint())
    guard(app, config.names)
    return app
