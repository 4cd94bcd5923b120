"""The API against its own description: Schemathesis asks every call, rightly and wrongly, about a house."""

import hashlib
import json
from collections import Counter

import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, given, settings
from scantling.blobs import Piece
from schemathesis import GenerationMode
from schemathesis.checks import CHECKS

from tests.entries import four_walls

LINES = "application/x-ndjson"
EXAMPLES = 8
#: Not asked: whether the engine refuses what its schema lets through, as it does by the meaning of a text.
CHECKED = (
    "not_a_server_error",
    "status_code_conformance",
    "content_type_conformance",
    "response_headers_conformance",
    "response_schema_conformance",
    "unsupported_method",
    "allow_header_conformance",
)
#: What a call says of a call that it cannot do anything with.
REFUSED = {400, 401, 403, 404, 405, 409, 411, 413, 415, 422}


@schemathesis.serializer(LINES)
def write_lines(_context, value):
    return value.encode(errors="replace") if isinstance(value, str) else json.dumps(value).encode()


@pytest.fixture
def subjects(client):
    """One of everything that an address can name."""
    house = four_walls()
    lines = "".join(json.dumps(entry) + "\n" for entry in house.entries)
    assert client.post("/api/journal", data=lines, content_type=LINES).json["left_out"] == 0

    def made(path, **said):
        answered = client.post(f"/api/{path}", json=said)
        assert answered.status_code == 201, answered.text
        return answered.json["entry"]["body"]

    paper = made(f"houses/{house.house}/articles", sort="paper", name="fern")["article"]
    over = made(f"rooms/{house.room}/coverings", article=paper)["covering"]
    lot = made(f"rooms/{house.room}/lots", article=paper, name="fern", count="3", price="115.50", date="2026-03-21")
    client.post(f"/api/rooms/{house.room}/pieces/issue")
    piece = client.get(f"/api/rooms/{house.room}/pieces").json["pieces"][0]["id"]
    free = made(f"rooms/{house.room}/free", name="shelf", profile="shelf", text="24", count="1")["free"]
    opening = made(f"rooms/{house.room}/openings", wall=house.walls[0], kind="door")["opening"]
    obstacle = made(f"rooms/{house.room}/obstacles", wall=house.walls[1], kind="tub", base="stops")["obstacle"]
    photo = photo_of(client, house.walls[0])
    said = {"of": house.walls[0], "what": "length", "x": 1, "y": 2}
    pin = made(f"attachments/{photo['attachment']}/pins", **said)["pin"]
    kept = made("sums", text="63 1/4 - 2")["sum"]
    return {**photo, "pin": pin, "sum": kept, "opening": opening, "obstacle": obstacle,
            "house": house.house, "room": house.room, "wall": house.walls[0], "thing": house.walls[0],
            "entry": house.entries[-1]["id"], "article": paper, "covering": over, "lot": lot["lot"], "piece": piece,
            "free": free, "name": "base.thickness", "device": "0123456789abcdef"}  # fmt: skip


def photo_of(client, thing):
    """An attachment of three bytes, which are here."""
    piece = Piece(hashlib.sha256(b"jpg").hexdigest(), 3, 0, b"jpg")
    assert client.post("/api/blobs", json=piece.body()).json == {"offset": None}
    said = {"blob": piece.blob, "size": 3, "type": "image/jpeg", "name": "stud"}
    made = client.post(f"/api/of/{thing}/attachments", json=said).json["entry"]["body"]
    return {"attachment": made["attachment"], "blob": piece.blob}


@pytest.fixture
def operations(client):
    def here(environ, start):
        return client.application.wsgi_app({**environ, "REMOTE_ADDR": "127.0.0.1"}, start)

    described = schemathesis.openapi.from_wsgi("/api/openapi.json", here)
    return [found.ok() for found in described.get_all_operations()]


def ask_all(operation, mode, subjects):
    """The statuses of all answers, each of them as it is described."""
    named = {parameter.name: subjects[parameter.name] for parameter in operation.path_parameters}
    strategy = operation.as_strategy(generation_mode=mode, path_parameters=named or None)
    statuses = Counter()
    checks = [CHECKS.get_one(name) for name in CHECKED]

    @settings(max_examples=EXAMPLES, derandomize=True, database=None, deadline=None, phases=[Phase.generate],
              suppress_health_check=list(HealthCheck))  # fmt: skip
    @given(strategy)
    def ask(case):
        answered = case.call(base_url="http://localhost")
        case.validate_response(answered, checks=checks)
        statuses[answered.status_code] += 1

    ask()
    return statuses


def test_every_call_answers_as_it_is_described(operations, subjects):
    told = Counter()
    for operation in operations:
        statuses = ask_all(operation, GenerationMode.POSITIVE, subjects)
        told += statuses
        # Else nothing but the way to it was tried. No device is paired here, so none can be struck off.
        assert statuses.keys() - {404} or operation.path == "/api/devices/{device}", operation.label
    assert len(operations) > 40
    assert told[200] + told[201] > len(operations) * EXAMPLES // 4


def test_what_no_description_allows_is_refused_and_breaks_nothing(operations, subjects):
    for operation in operations:
        if operation.body:
            statuses = ask_all(operation, GenerationMode.NEGATIVE, subjects)
            assert statuses.keys() <= REFUSED | {200, 201}, operation.label
