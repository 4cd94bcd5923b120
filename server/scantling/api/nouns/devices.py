"""Devices: who may enter, and how another is let in."""

from typing import Any

import flask
from flask import current_app
from marshmallow import fields, validate

from scantling.api.blueprint import Blueprint, laptop
from scantling.api.refusals import DoorError
from scantling.clock import now_ms
from scantling.engine.forms import Schema
from scantling.households import Households
from scantling.lan.code import code_path
from scantling.lan.pairing import show_code, strike_device

blueprint = Blueprint("devices", __name__, url_prefix="/api/devices", description="Who may enter.")

NAME_LETTERS = 60


class Pairing(Schema):
    """What a device says to be let in."""

    code = fields.String(required=True, validate=validate.Length(max=40))
    name = fields.String(
        required=True, validate=[validate.Length(min=1, max=NAME_LETTERS), validate.ContainsNoneOf("\0")]
    )  # a NUL is no letter to PostgreSQL


class Device(Schema):
    id = fields.String(required=True)
    name = fields.String(required=True)
    paired_ms = fields.Integer(required=True)
    seen_ms = fields.Integer(required=True)
    struck_ms = fields.Integer(required=True, allow_none=True)


class Paired(Schema):
    """The token is said this once, and kept by the device alone."""

    token = fields.String(required=True)
    device = fields.Nested(Device, required=True)


class QrCode(Schema):
    """A QR code as one path of unit squares, in a square of `side` with its quiet zone."""

    side = fields.Integer(required=True)
    path = fields.String(required=True)


class Network(Schema):
    """How a phone reaches this laptop: the page, the page that helps it to trust, and what that is to show."""

    origin = fields.String(required=True)
    trust_address = fields.String(required=True)
    trust_code = fields.Nested(QrCode, required=True)
    fingerprint = fields.String(required=True)


class Devices(Schema):
    devices = fields.List(fields.Nested(Device), required=True)
    this = fields.String(required=True, allow_none=True, metadata={"description": "The id of the device that asks."})
    owner = fields.Boolean(required=True, metadata={"description": "Whether the laptop's own page asks."})
    network = fields.Nested(Network, required=True, allow_none=True)


class ShownCode(Schema):
    """A code for one device, good for ten minutes; the link holds it behind a #, which no browser sends."""

    code = fields.String(required=True)
    link = fields.String(required=True, allow_none=True)
    link_code = fields.Nested(QrCode, required=True, allow_none=True)


@blueprint.get("")
@blueprint.response(200, Devices)
def list_devices() -> dict[str, Any]:
    """Every device that was ever paired, and how one more reaches this laptop."""
    with laptop().store.register() as register:
        listed = register.devices()
    this = flask.g.device
    return {"devices": listed, "this": this.id if this else None, "owner": this is None, "network": _network()}


@blueprint.post("/codes")
@blueprint.response(201, ShownCode)
def add_code() -> dict[str, Any]:
    """Show a new code. On the laptop alone."""
    _require_owner()
    code = show_code(laptop().store, now_ms())
    home = current_app.config["HOME"]
    link = f"{home.identity.origin}/#pair={code}" if home else None
    return {"code": code, "link": link, "link_code": code_path(link) if link else None}


@blueprint.post("")
@blueprint.arguments(Pairing)
@blueprint.response(201, Paired)
def add_device(said: dict[str, Any]) -> dict[str, Any]:
    """Let a device in by a code that the laptop shows. The one call that needs no token."""
    households: Households = current_app.extensions["households"]
    token, device = households.pair(said["code"], said["name"], now_ms())
    return {"token": token, "device": device}


@blueprint.delete("/<device>")
@blueprint.response(200, Devices)
def strike(device: str) -> dict[str, Any]:
    """Strike a device off: its token opens nothing from now on. A device may strike itself; the laptop, any."""
    if flask.g.device is None or flask.g.device.id != device:
        _require_owner()
    strike_device(laptop().store, device, now_ms())
    listed: dict[str, Any] = list_devices()
    return listed


def _require_owner() -> None:
    if flask.g.device is not None:
        raise DoorError("owner-only")


def _network() -> dict[str, Any] | None:
    home = current_app.config["HOME"]
    if home is None:
        return None
    identity = home.identity
    return {
        "origin": identity.origin,
        "trust_address": identity.trust_address,
        "trust_code": code_path(identity.trust_address),
        "fingerprint": home.authority.fingerprint,
    }
