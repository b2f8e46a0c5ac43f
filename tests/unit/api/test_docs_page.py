"""The page that shows the contract: its script and style are the publisher's own, and their licences stand beside them.

Source of the digests: the files in the package `swagger-ui-dist` 5.32.6 as npm delivers it, taken after
npm had checked the package against the registry's own sha512.
"""

import asyncio
import hashlib
import threading
from importlib import resources

import pytest
from fastapi import FastAPI, Request

from service.api.contract import docs_page
from service.api.contract.docs_page import routes

ASSETS = resources.files("service.api.contract") / "assets"


@pytest.mark.parametrize(
    ("name", "digest"),
    [
        ("swagger-ui-bundle.js", "4b5a9b35a1adf37f00d39c0bae23cdb37007e2946240ef035137cc85b4d55349"),
        ("swagger-ui.css", "ca238f7d7c2cf4480c1e77a9c3b9da915ab216e96ffd354e69076560c650c6de"),
    ],
)
def test_a_file_of_the_page_is_the_publishers_unchanged(name: str, digest: str) -> None:
    assert hashlib.sha256((ASSETS / name).read_bytes()).hexdigest() == digest


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("swagger-ui.LICENSE.txt", "Apache License"),
        ("swagger-ui.NOTICE.txt", "swagger-ui"),
        ("swagger-ui-bundle.js.LICENSE.txt", "MIT"),
        ("README.md", "5.32.6"),
    ],
)
def test_licences_and_origin_stand_beside_them(name: str, words: str) -> None:
    assert words in (ASSETS / name).read_text(encoding="utf-8")


def test_the_script_says_the_version_that_the_origin_names() -> None:
    assert b'PACKAGE_VERSION:"5.32.6"' in (ASSETS / "swagger-ui-bundle.js").read_bytes()


def test_the_page_has_a_route_for_itself_and_for_each_of_its_files() -> None:
    assert [route.path for route in routes()] == [
        "/openapi.json",
        "/docs",
        "/docs/house.css",
        "/docs/start.js",
        "/docs/page.js",
        "/docs/page.css",
    ]


def test_the_document_is_made_beside_the_loop_that_answers_others(monkeypatch: pytest.MonkeyPatch) -> None:
    makers: list[threading.Thread] = []

    def noted(_: FastAPI) -> bytes:
        makers.append(threading.current_thread())
        return b"{}"

    monkeypatch.setattr(docs_page, "document_bytes", noted)
    request = Request({"type": "http", "method": "GET", "path": "/openapi.json", "headers": [], "app": FastAPI()})
    answer = asyncio.run(docs_page.routes()[0].endpoint(request))
    assert answer.body == b"{}"
    assert makers
    assert threading.main_thread() not in makers
