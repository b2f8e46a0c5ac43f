"""The OpenAPI document of the application, and what the tests of this folder ask of it."""

from collections.abc import Iterator
from functools import cache
from typing import Any

from fastapi import FastAPI
from jsonschema import Draft202012Validator

from service.app import create_app
from service.settings import Settings

Json = dict[str, Any]


def app() -> FastAPI:
    """Return an application with the settings that it has by itself, whatever the environment says."""
    return create_app(Settings.model_construct())


@cache
def document() -> Json:
    """Return the document."""
    return app().openapi()


def resolve(value: Json) -> Json:
    """Return what a reference into the document leads to; anything else as it is."""
    while "$ref" in value:
        found: Any = document()
        for step in value["$ref"].removeprefix("#/").split("/"):
            found = found[step.replace("~1", "/").replace("~0", "~")]
        value = found
    return value


def validator(schema: Json) -> Draft202012Validator:
    """Return what holds an instance against a schema of the document."""
    return Draft202012Validator({"components": document()["components"], **schema})


def operations() -> Iterator[tuple[str, str, Json]]:
    """Yield path, method and operation."""
    for path, methods in document()["paths"].items():
        for method, operation in methods.items():
            yield path, method, operation


def answer_schema(path: str, method: str, status: int, media_type: str) -> Json:
    """Return the schema that the document gives for an answer."""
    response = resolve(document()["paths"][path][method]["responses"][str(status)])
    schema: Json = response["content"][media_type]["schema"]
    return schema


def fields() -> Iterator[tuple[str, Json]]:
    """Yield `Model.field` and schema of every member of every model."""
    for name, schema in document()["components"]["schemas"].items():
        for field, member in schema.get("properties", {}).items():
            yield f"{name}.{field}", member
