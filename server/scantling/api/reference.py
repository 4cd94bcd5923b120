"""The reference: openapi.json and a page of it to read, both drawn from the schemas that the requests are checked by.

The page stands on its own (no script, no other host), so it reads the same in a house without internet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from pathlib import Path
from threading import Lock
from typing import Any, cast

import flask
from apispec.ext.marshmallow import MarshmallowPlugin
from flask import Flask, Response, render_template
from flask_smorest import Api  # type: ignore[import-untyped]
from markupsafe import Markup
from marshmallow import Schema
from marshmallow.fields import Field

from scantling.api.refusals import RefusalBody
from scantling.engine.desk import QUESTIONS
from scantling.engine.shapes import DegreesText, LengthText
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_length
from scantling.site import HEADERS

STYLE = (Path(__file__).parent / "templates" / "reference.css").read_text(encoding="utf-8")
METHODS = ("get", "post", "put", "delete")

blueprint = flask.Blueprint("reference", __name__, template_folder="templates")


class NotebookApi(Api):
    """flask-smorest's collector of the specification, with our error body in it."""

    ERROR_SCHEMA = RefusalBody

    def __init__(self, *arguments: Any, **options: Any) -> None:
        super().__init__(*arguments, **options)
        self._describing = Lock()
        self._to_describe: list[Callable[[], None]] = [lambda: _describe_questions(self)]

    def describe_later(self, describe: Callable[[], None]) -> None:
        """Keep a part of the specification for when that is first asked for, before the questions."""
        self._to_describe.insert(-1, describe)

    def specification(self) -> dict[str, Any]:
        """All of it; it is put together when it is first asked for: no server starts later for it."""
        with self._describing:
            for describe in self._to_describe:
                describe()
            self._to_describe = []
            return cast(dict[str, Any], self.spec.to_dict())


def name_shape(schema: type[Schema] | Schema) -> str:
    """The name of a shape: its class, for the engine's with its module, since two questions may both have a Piece."""
    made = schema if isinstance(schema, type) else type(schema)
    module = made.__module__.rpartition(".")[2]
    return f"{module}.{made.__name__}" if ".questions." in made.__module__ else made.__name__


def _describe_questions(api: NotebookApi) -> None:
    """Put every question of the desk into the specification."""
    refer = api.ma_plugin.converter.resolve_nested_schema
    # Some questions share a shape, and a list of choices names each once.
    takes = [refer(shape) for shape in dict.fromkeys(question.takes for question in QUESTIONS.values())]
    gives = [refer(shape) for shape in dict.fromkeys(question.gives for question in QUESTIONS.values())]
    answered = [
        {"type": "object", "required": ["answer"], "properties": {"answer": {"anyOf": gives}}},
        refer(RefusalBody),
    ]
    components = api.spec.components
    components.schema("Question", {"anyOf": takes})
    components.schema("Answered", {"oneOf": answered})


@blueprint.get("/api/openapi.json")
def read_specification() -> Response:
    """The specification by which a program calls."""
    return flask.jsonify(flask.current_app.extensions["scantling-api"].specification())


@blueprint.get("/api/")
def read_reference() -> Response:
    """The reference as a page."""
    api = flask.current_app.extensions["scantling-api"]
    spec = api.specification()
    refer = api.ma_plugin.converter.resolve_nested_schema
    questions = [
        {"name": name, "doc": question.doc, "takes": refer(question.takes), "gives": refer(question.gives)}
        for name, question in QUESTIONS.items()
    ]
    page = render_template(
        "reference.html",
        build=flask.current_app.config["BUILD"],
        groups=list(list_groups(spec)),
        questions=questions,
        shapes=list(list_shapes(spec)),
        shape=format_shape,
    )
    return Response(page, headers=HEADERS, content_type="text/html; charset=utf-8")


@blueprint.get("/api/reference.css")
def read_style() -> Response:
    return Response(STYLE, headers=HEADERS, content_type="text/css; charset=utf-8")


def list_groups(spec: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    """The calls by noun."""
    for tag in spec["tags"]:
        calls = [call for call in list_calls(spec) if tag["name"] in call["tags"]]
        yield {"name": tag["name"], "doc": tag.get("description", ""), "calls": calls}


def list_calls(spec: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    for path, operations in spec["paths"].items():
        for method, operation in operations.items():
            if method in METHODS:
                yield {
                    "method": method.upper(),
                    "path": path,
                    "doc": " ".join((operation["summary"], operation.get("description", ""))),
                    "tags": operation["tags"],
                    "takes": _schema_in(operation.get("requestBody", {})),
                    "gives": _schema_in(operation["responses"].get("200") or operation["responses"].get("201", {})),
                }


def _schema_in(carrier: Mapping[str, Any]) -> Any:
    return next((content.get("schema") for content in carrier.get("content", {}).values()), None)


def list_shapes(spec: Mapping[str, Any]) -> Iterator[tuple[str, list[dict[str, Any]]]]:
    """The shapes by name, each with its fields."""
    for name, schema in sorted(spec["components"]["schemas"].items()):
        required = schema.get("required", ())
        fields = schema.get("properties", {}).items()
        rows = [
            {
                "name": field,
                "kind": format_shape(kind),
                "doc": kind.get("description", ""),
                "required": field in required,
            }
            for field, kind in fields
        ]
        yield name, rows or [{"name": "", "kind": format_shape(schema), "doc": "", "required": False}]


def format_shape(schema: Mapping[str, Any]) -> Markup:
    """A schema in a few words, its parts linked."""
    if "$ref" in schema:
        name = schema["$ref"].rpartition("/")[2]
        return Markup('<a href="#{0}">{0}</a>').format(name)
    for joined in ("oneOf", "anyOf", "allOf"):
        if joined in schema:
            return Markup(" or ").join(format_shape(one) for one in schema[joined])
    if "enum" in schema:
        return Markup(" or ").join(Markup("<code>{}</code>").format(choice) for choice in schema["enum"])
    if schema.get("type") == "array":
        return Markup("list of ") + format_shape(schema.get("items", {}))
    kinds = schema.get("type", "anything")
    return Markup.escape(" or ".join(kinds) if isinstance(kinds, list) else kinds)


def describe_field(self: object, field: Field[Any], ret: dict[str, Any], **_: object) -> dict[str, Any]:
    """What the specification does not know of the engine's own fields: they are texts, and their defaults are too."""
    described: dict[str, Any] = {}
    if isinstance(ret.get("default"), Length):
        described["default"] = format_length(ret["default"], SIXTY_FOURTH)
    if isinstance(ret.get("default"), Fraction):
        described["default"] = str(ret["default"])
    if isinstance(field, LengthText | DegreesText):
        described["type"] = "string"
        described.setdefault("description", ret.get("description") or (type(field).__doc__ or "").partition("\n")[0])
    return described


def build_api(app: Flask) -> NotebookApi:
    """The collector for this app; blueprints are registered with it."""
    app.config.update(API_TITLE="Scantling", API_VERSION="1", OPENAPI_VERSION="3.1.0")
    api = NotebookApi(app, spec_kwargs={"marshmallow_plugin": MarshmallowPlugin(schema_name_resolver=name_shape)})
    api.ma_plugin.converter.add_attribute_function(describe_field)
    app.extensions["scantling-api"] = api
    return api
