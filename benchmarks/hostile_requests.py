"""Hostile requests by class, made from well-meant ones; the same ones in every run."""

from __future__ import annotations

import copy
import json
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from tests.contract.http_wire import head, post

DEMO = Path(__file__).parents[1] / "demo_requests"
JSON_TYPE = b"Content-Type: application/json"
CHUNKED = b"Transfer-Encoding: chunked"
# Texts that have broken readers elsewhere: long, nested, turned round, half a character, another script's digits.
TEXTS = [
    "",
    " ",
    "\x00",
    "\ud800",
    "\u202e205/55 R16",
    "٢٠٥/٥٥ R١٦ 94W",
    "２０５/５５ R16",
    "205/55 R16 94W" + " " * 5000,
    "205/55 R16 94W" + "X" * 5000,
    "2" * 5000,
    "1/1" * 1000,
    "((((" * 500,
    "5x" * 2000,
    "205/55 R16 94W\n",
    "205/55 R16\t94W",
    "0/0 R0 0A",
    "999/99 R99 999Y",
    "-205/55 R16 94W",
    "1e9J x 1e9 ET1e9",
    "6.5J x 16 ET" + "9" * 400,
    "' OR 1=1 --",
    "{{7*7}}",
    "<script>alert(1)</script>",
    "../../etc/passwd",
    "%s%n%x",
    "🛞" * 1000,
    "e\u0301" * 1000,
]
RAW_VALUES = [
    "null", "true", "[]", "{}", '""', "0", "-0.0", "-1", "1e308", "-1e308", "1e-320", "9" * 400, "1e400", "NaN",
    "Infinity", "0.1e", "01", "[[[[]]]]", '{"a":1,"a":2}', '"NaN"', '"1"', "1.0000000001", '"\\ud800"', '"\\u0000"',
]  # fmt: skip
PATHS = [
    "/", "//", "/v1", "/v1/", "/v1/fitments/check/", "/v1/../health/live", "/%2e%2e/%2e%2e/etc/passwd", "/%00", "/%ff",
    "/v1/tables/%2e%2e%2fload-index", "/v1/rule-packs/..%2f..", "/docs/../service/app.py", "/docs/%2e%2e/app.py",
    "/a;b", "/v1/tables/" + "x" * 8000, "/" + "a/" * 5000, "/health/live%0d%0aX:1", "/%E2%80%AE",
    "/v1/tables/load-index%00",
]  # fmt: skip
METHODS = ["DELETE", "PUT", "PATCH", "OPTIONS", "TRACE", "CONNECT", "PROPFIND", "HEAD", "QUERY", "get", "X" * 20]


class Well(NamedTuple):
    """A well-meant request."""

    path: str
    body: Any


def well_meant() -> list[Well]:
    """Return the demo requests, by the route that the name of their file gives."""
    found = []
    for file in sorted(DEMO.glob("*.json")):
        route = f"/v1/fitments/{file.stem.rpartition('.')[2]}"
        found.append(Well(route, json.loads(file.read_text(encoding="utf-8"))))
    return found


def leaves(value: object, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield where every member and item of a JSON value is."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, item in items:
        yield (*path, key)
        yield from leaves(item, (*path, key))


def with_raw(body: object, path: tuple[Any, ...], raw: str) -> bytes:
    """Return the body as JSON with the value at a place spelt as `raw`."""
    changed: Any = copy.deepcopy(body)
    parent = changed
    for key in path[:-1]:
        parent = parent[key]
    parent[path[-1]] = "@@here@@"
    return json.dumps(changed).replace('"@@here@@"', raw).encode("utf-8")


class Attacks:
    """Endless sources of requests, one method for each class."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.well = well_meant()
        self.places = [(item, place) for item in self.well for place in leaves(item.body)]
        self.texts = [
            (item, place)
            for item, place in self.places
            if place[-1] in ("size", "bolt_circle", "rule_pack", "label", "built", "category")
        ]

    def wrong_values(self) -> bytes:
        """A value of another type or beyond every bound, NaN and repeated keys among them."""
        item, place = self.random.choice(self.places)
        return post(item.path, with_raw(item.body, place, self.random.choice(RAW_VALUES)))

    def hostile_texts(self) -> bytes:
        """A designation or word that tries to break its reader, in the body or in the query."""
        text = self.random.choice(TEXTS)
        if self.random.random() < 0.3:
            encoded = "".join(f"%{byte:02X}" for byte in text.encode("utf-8", "surrogatepass"))
            return head("GET", f"/v1/designations/{self.random.choice(('tyre', 'rim'))}?text={encoded}")
        item, place = self.random.choice(self.texts)
        return post(item.path, with_raw(item.body, place, json.dumps(text)))

    def members(self) -> bytes:
        """Members that are missing, misspelt, unknown, or unknown by the hundred."""
        item, place = self.random.choice(self.places)
        changed = copy.deepcopy(item.body)
        parent = changed
        for key in place[:-1]:
            parent = parent[key]
        kind = self.random.randrange(3)
        if kind == 0:
            del parent[place[-1]]
        elif isinstance(parent, dict):
            count = 1 if kind == 1 else 300
            parent |= {f"{place[-1]}{'~/' * self.random.randrange(40)}{number}": 1 for number in range(count)}
        return post(item.path, json.dumps(changed).encode())

    def broken_json(self) -> bytes:
        """A body cut short, with bytes changed, in another encoding, nested too deep."""
        item = self.random.choice(self.well)
        raw = bytearray(json.dumps(item.body).encode())
        kind = self.random.randrange(6)
        if kind == 0:
            del raw[self.random.randrange(len(raw)) :]
        elif kind == 1:
            for _ in range(self.random.randrange(1, 9)):
                raw[self.random.randrange(len(raw))] = self.random.randrange(256)
        elif kind == 2:
            raw = bytearray(raw.decode().encode(self.random.choice(("utf-16", "utf-32", "utf-16-le", "utf-8-sig"))))
        elif kind == 3:
            depth = self.random.choice((17, 100, 1000, 7000))
            raw = bytearray(b'[{"a":' * depth) if self.random.random() < 0.5 else bytearray(b"[" * depth + b"]" * depth)
        elif kind == 4:
            raw += self.random.choice((b"{}", b",", b"\x00", b"//x", b"\xff"))
        else:
            raw = bytearray(self.random.randbytes(self.random.randrange(2000)))
        return post(item.path, bytes(raw))

    def media_types(self) -> bytes:
        """Another media type, charset or encoding of the body."""
        item = self.random.choice(self.well)
        raw = json.dumps(item.body).encode()
        types = (b"text/plain", b"application/xml", b"application/json; charset=utf-16", b"multipart/form-data", b"",
                 b"*/*", b"application/json; charset=" + b"x" * 5000, b"\xff/\xff",
                 b"application/json, text/plain")  # fmt: skip
        encodings = (b"gzip", b"br", b"identity", b"gzip, gzip", b"\x01")
        if self.random.random() < 0.4:
            return post(item.path, raw, b"Content-Encoding: " + self.random.choice(encodings))
        return post(item.path, raw, media_type=self.random.choice(types))

    def large_bodies(self) -> bytes:
        """A body beyond the limit: announced, sent, or in chunks without end."""
        path = self.random.choice(self.well).path
        kind = self.random.randrange(4)
        if kind == 0:
            return head("POST", path, JSON_TYPE, b"Content-Length: %d" % 10 ** self.random.randrange(8, 19))
        if kind == 1:
            return post(path, b"[" * 3_000_000)
        if kind == 2:
            return post(path, b"[" + b"[]," * 900_000 + b"[]]")
        return head("POST", path, JSON_TYPE, CHUNKED) + (b"1000\r\n" + b" " * 4096 + b"\r\n") * 700

    def heads(self) -> bytes:
        """No HTTP, or HTTP that two readers would read in two ways."""
        lines = (b"Content-Length: 3\r\nContent-Length: 4", b"Content-Length: -1", b"Content-Length: " + b"9" * 50,
                 b"Content-Length: 4\r\nTransfer-Encoding: chunked", b"Transfer-Encoding: xchunked", b"A: b\x00c",
                 b": x", b"Transfer-Encoding: chunked, identity", b"No colon", b" folded: 1", b"Content-Length: 0x10",
                 b"Host: a\r\nHost: b", b"Content-Length: +4", b"Transfer-Encoding : chunked")  # fmt: skip
        firsts = (b"GET / HTTP/9.9", b"GET /", b"GET  / HTTP/1.1", b"get / HTTP/1.1", b"G\x00T / HTTP/1.1",
                  b"GET /\xff HTTP/1.1", b"GET / HTTP/1.1\x00", b"\x16\x03\x01\x02\x00\x01", b"PRI * HTTP/2.0",
                  b"GET http://[::1 HTTP/1.1")  # fmt: skip
        kind = self.random.randrange(4)
        if kind == 0:
            return self.random.choice(firsts) + b"\r\nHost: a\r\n\r\n"
        if kind == 1:
            return b"POST /v1/fitments/check HTTP/1.1\r\n" + self.random.choice(lines) + b"\r\n\r\nabcd"
        if kind == 2:
            return self.random.randbytes(self.random.randrange(1, 300)) + b"\r\n\r\n"
        sizes = (b"zz", b"-1", b"f" * 20, b"1;" + b"x" * 300, b"5\r\nabc")
        start = head("POST", "/v1/fitments/check", JSON_TYPE, CHUNKED)
        return start + self.random.choice(sizes) + b"\r\n{}\r\n" + b"0\r\n\r\n"

    def large_heads(self) -> bytes:
        """A head beyond 32 KiB: in one line, in many, in the target."""
        size = self.random.choice((33, 40, 64, 200, 1000)) * 1024
        kind = self.random.randrange(3)
        if kind == 0:
            return head("GET", "/health/live", b"X-A: " + b"a" * size)
        if kind == 1:
            return head("GET", "/health/live", *([b"X-Abcdefgh: 0123456789"] * (size // 24)))
        return head("GET", "/v1/" + "a" * size)

    def paths_and_methods(self) -> bytes:
        """A path that leads nowhere or tries to lead out, a method that does not suit or is none."""
        known = ["/v1/fitments/check", "/v1/tables/load-index", "/health/live", "/metrics", "/openapi.json", "/docs"]
        if self.random.random() < 0.5:
            path = self.random.choice(PATHS)
            return head("GET", path if self.random.random() < 0.7 else f"/{self.random.randbytes(8).hex()}")
        return head(self.random.choice(METHODS), self.random.choice(known), b"Content-Length: 0")

    def queries(self) -> bytes:
        """A query with names repeated, unknown, by the hundred, in broken escapes."""
        queries = ("text=a&text=b", "x=1", "&&&&", "=", "%", "%zz=%zz", "text=%", "text=%ff%fe", "text[]=1", "text",
                   "%00=1", "&".join(f"a{number}=1" for number in range(2000)), "text=" + "9" * 20000, "text=a#b",
                   "text=a;b=c")  # fmt: skip
        paths = (
            "/v1/designations/tyre",
            "/v1/tables/load-index",
            "/v1/rule-packs",
            "/health/ready",
            "/metrics",
            "/nope",
        )
        return head("GET", f"{self.random.choice(paths)}?{self.random.choice(queries)}")

    def header_values(self) -> bytes:
        """Hostile values in headers that the service looks at."""
        values = (b"", b"\x80\xff", b"a" * 9000, b"{{7*7}}", b"<script>", b"*", b"W/*", b",,,,", b'"' * 4000,
                  b"q=" * 3000, b"*/*;q=x", b"bytes=0-,0-,0-", b"null", b"100-continue, x", b"\t")  # fmt: skip
        names = (b"X-Request-ID", b"X-API-Key", b"Origin", b"If-None-Match", b"Accept", b"Accept-Encoding", b"Range",
                 b"Host", b"X-Forwarded-For", b"Traceparent", b"Cookie", b"Access-Control-Request-Method",
                 b"Upgrade")  # fmt: skip
        line = self.random.choice(names) + b": " + self.random.choice(values)
        if self.random.random() < 0.5:
            item = self.random.choice(self.well)
            return post(item.path, json.dumps(item.body).encode(), line)
        return head(self.random.choice(("GET", "OPTIONS")), "/v1/rule-packs", line)

    def half_requests(self) -> bytes:
        """A head or body that stops half-way and keeps silent."""
        item = self.random.choice(self.well)
        raw = post(item.path, json.dumps(item.body).encode())
        return raw[: self.random.randrange(len(raw))]

    def well_meant_request(self) -> bytes:
        """A well-meant request."""
        item = self.random.choice(self.well)
        return post(item.path, json.dumps(item.body).encode())
