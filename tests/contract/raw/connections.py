"""What else a connection carries: targets, requests sent ahead, asked upgrades, fields behind a body, slow senders.

Expected answers by RFC 9110 (7.8 upgrades, 6.5 trailers), RFC 9112 (3.2 targets, 9.3 pipelining), RFC 6585 (431).
"""

from tests.contract.raw.case import CHUNKED, ECHO, LAST, LIVE, Case, body, chunk, echo_head, sized

_B = body()
_BIG = b"a" * 40_000
# As the Java platform's client asks for HTTP/2 with every request to a cleartext address, field by field.
_WISH = (
    b"Connection: Upgrade, HTTP2-Settings",
    b"HTTP2-Settings: AAEAAEAAAAIAAAABAAMAAABkAAQBAAAAAAUAAEAA",
    b"Upgrade: h2c",
)
_WISH_HEAD = echo_head(len(_B), *_WISH)
_WISH_CHUNKED = ECHO + b"\r\n".join([*_WISH, b"Transfer-Encoding: chunked", b"", b""])
_SHUT = b"Connection: close"

TARGETS = [
    Case("absolute form", [LIVE.replace(b" /", b" http://a/", 1)], "200 open"),
    Case("absolute form in capitals", [LIVE.replace(b" /", b" HTTP://A/", 1)], "200 open"),
    Case("absolute form of another host", [LIVE.replace(b" /", b" http://b/", 1)], "400 closed"),
    Case("absolute form of another port", [LIVE.replace(b" /", b" http://a:81/", 1)], "400 closed"),
    Case("absolute form with a user", [LIVE.replace(b" /", b" http://b@a/", 1)], "400 closed"),
    Case("absolute form without a path", [b"GET http://a HTTP/1.1\r\nHost: a\r\n\r\n"], "400 closed"),
    Case("no host", [b"GET /health/live HTTP/1.1\r\n\r\n"], "400 closed"),
    Case("two hosts", [LIVE[:-2] + b"Host: b\r\n\r\n"], "400 closed"),
    Case("no host in HTTP/1.0", [b"GET /health/live HTTP/1.0\r\n\r\n"], "200 closed"),
    Case("asterisk", [b"OPTIONS * HTTP/1.1\r\nHost: a\r\n\r\n"], "404 open"),
    Case("tunnel", [b"CONNECT a:80 HTTP/1.1\r\nHost: a:80\r\n\r\n" + LIVE], "400 closed"),
    Case("tunnel to a path", [b"CONNECT /health/live HTTP/1.1\r\nHost: a\r\n\r\n" + LIVE], "400 closed"),
    # RFC 9112, 3 leaves it to the reader.
    Case("two blanks behind the method", [LIVE.replace(b"GET ", b"GET  ")], "200 open"),
    Case("a method in small letters", [LIVE.replace(b"GET", b"get")], "400 closed"),
    Case("HTTP/2 without asking", [b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n"], "400 closed"),
    Case("HTTP/0.9", [b"GET /health/live\r\n\r\n"], "400 closed"),
]

PIPELINES = [
    Case("twenty requests", [LIVE * 20], "200 " * 20 + "open"),
    Case("twenty requests, then garbage", [LIVE * 20 + b"\x00garbage\r\n\r\n"], "200 " * 20 + "400 closed"),
    Case("bodies in turn", [b"".join(sized(n) for n in (1, 2, 3, 4, 5))], "200=1 200=2 200=3 200=4 200=5 open"),
    Case(
        "length and chunks in turn", [sized(1) + CHUNKED + chunk(body(2)) + LAST + sized(3)], "200=1 200=2 200=3 open"
    ),
    Case("a refused body before another", [sized(1).replace(b"/json", b"/text") + sized(2)], "415 200=2 open"),
    Case("a body to nowhere before another", [sized(1).replace(b"echo", b"nope") + sized(2)], "404 200=2 open"),
    Case("a body behind GET", [LIVE[:-2] + b"Content-Length: 9\r\n\r\nGET / HTT" + sized(2)], "200 200=2 open"),
    Case("a request behind the last one", [sized(1, _SHUT) + sized(2)], "200=1 closed"),
    Case("a request behind the last one of HTTP/1.0", [sized(1).replace(b"P/1.1", b"P/1.0") + LIVE], "200=1 closed"),
    Case("blank lines between requests", [LIVE + b"\r\n\r\n" + LIVE], "200 200 open"),
    Case("blank lines without end", [b"\r\n" * 20_000], "431 closed"),
    Case("a broken chunk behind two requests", [LIVE * 2 + CHUNKED + b"zz\r\n"], "200 200 400 closed"),
    Case("a broken chunk, its head before", [LIVE + CHUNKED, b"zz\r\n"], "200 400 closed"),
    Case(
        "a large head behind two requests", [LIVE * 2 + LIVE[:-2] + b"X: " + _BIG + b"\r\n\r\n"], "200 200 431 closed"
    ),
    Case("garbage behind a body", [sized(1) + b"\x16\x03\x01" + b"\x00" * 90], "200=1 400 closed"),
]

UPGRADES = [
    Case("h2c", [_WISH_HEAD + _B], "200=4 open"),
    Case("h2c in two packets", [_WISH_HEAD, _B], "200=4 open"),
    Case(
        "h2c in many packets",
        [(_WISH_HEAD + _B)[at : at + 7] for at in range(0, len(_WISH_HEAD + _B), 7)],
        "200=4 open",
    ),
    Case("h2c, chunks", [_WISH_CHUNKED + chunk(_B) + LAST], "200=4 open"),
    Case("h2c, chunks in packets", [_WISH_CHUNKED, chunk(_B[:7]), chunk(_B[7:]), LAST], "200=4 open"),
    Case("h2c and a request behind it", [_WISH_HEAD + _B + sized(2)], "200=4 200=2 open"),
    Case("h2c five times", [(_WISH_HEAD + _B) * 5], "200=4 " * 5 + "open"),
    Case(
        "h2c and close",
        [echo_head(len(_B), b"Connection: Upgrade, close", b"Upgrade: h2c") + _B + LIVE],
        "200=4 closed",
    ),
    Case("h2c in HTTP/1.0", [_WISH_HEAD.replace(b"P/1.1", b"P/1.0") + _B], "200=4 closed"),
    Case("h2c, body like a request", [echo_head(len(LIVE), *_WISH), LIVE], "400 open"),
    Case("h2c, garbage behind it", [_WISH_HEAD + _B + b"\x00garbage\r\n\r\n"], "200=4 400 closed"),
    Case("h2c, two lengths", [_WISH_HEAD[:-2] + b"Content-Length: 1\r\n\r\n" + _B], "400 closed"),
    Case("h2c, a large head", [echo_head(len(_B), *_WISH, b"X: " + _BIG) + _B], "431 closed"),
    Case("h2c and leave to send", [echo_head(len(_B), *_WISH, b"Expect: 100-continue"), _B], "100 200=4 open"),
    Case("h2c, fields behind the body", [_WISH_CHUNKED + chunk(_B) + b"0\r\nUpgrade: h2c\r\n\r\n"], "200=4 open"),
    Case("h2c without a body", [LIVE[:-2] + b"\r\n".join(_WISH) + b"\r\n\r\n"], "200 open"),
    Case("a web socket", [LIVE[:-2] + b"Connection: upgrade\r\nUpgrade: websocket\r\n\r\n" + LIVE], "200 200 open"),
    Case("an upgrade to TLS", [sized(4, b"Connection: Upgrade", b"Upgrade: TLS/1.0")], "200=4 open"),
]

TRAILERS = [
    Case("a field behind the body", [CHUNKED + chunk(_B) + b"0\r\nX-Sum: 1\r\n\r\n"], "200=4 open"),
    Case(
        "a media type behind the body",
        [CHUNKED.replace(b"/json", b"/text") + chunk(_B) + b"0\r\nContent-Type: application/json\r\n\r\n"],
        "415 open",
    ),
    Case(
        "a media type behind the body that would not do",
        [CHUNKED + chunk(_B) + b"0\r\nContent-Type: text/plain\r\n\r\n"],
        "200=4 open",
    ),
    Case("40 KiB behind no body", [CHUNKED + b"0\r\nX: " + _BIG + b"\r\n\r\n"], "431 closed"),
    Case("a host behind the body", [CHUNKED + chunk(_B) + b"0\r\nHost: b\r\n\r\n"], "200=4 open"),
    Case("a length behind the body", [CHUNKED + chunk(_B) + b"0\r\nContent-Length: 5\r\n\r\n" + LIVE], "400 closed"),
    Case(
        "fields behind the body, then a request",
        [CHUNKED + chunk(_B) + b"0\r\nX: 1\r\n\r\n" + sized(2)],
        "200=4 200=2 open",
    ),
    Case("30 KiB behind the body", [CHUNKED + chunk(_B) + b"0\r\nX: " + _BIG[:30_000] + b"\r\n\r\n"], "200=4 open"),
    Case("40 KiB behind the body", [CHUNKED + chunk(_B) + b"0\r\nX: " + _BIG + b"\r\n\r\n"], "431 closed"),
    Case("many fields behind the body", [CHUNKED + chunk(_B) + b"0\r\n" + b"X: 1\r\n" * 9000 + b"\r\n"], "431 closed"),
    Case("a field without end behind the body", [CHUNKED + chunk(_B) + b"0\r\nX: a", _BIG, _BIG], "431 closed"),
    Case("a folded field behind the body", [CHUNKED + chunk(_B) + b"0\r\nX: a\r\n b\r\n\r\n"], "400 closed"),
]

SLOW = [
    Case("silence", [], "closed", impatient=True),
    Case("a blank line", [b"\r\n"], "closed", impatient=True),
    Case("half a head", [LIVE[:20]], "408 closed", impatient=True),
    Case("half a head behind a request", [LIVE + LIVE[:20]], "200 408 closed", impatient=True),
    Case("half a body", [sized()[:-5]], "408 closed", impatient=True),
    Case("half a chunk", [CHUNKED + b"9\r\n" + _B[:5]], "408 closed", impatient=True),
    Case("a body without its last chunk", [CHUNKED + chunk(_B)], "408 closed", impatient=True),
    Case("half a field behind the body", [CHUNKED + chunk(_B) + b"0\r\nX-Su"], "408 closed", impatient=True),
    Case("h2c, half a head", [_WISH_HEAD[:-4]], "408 closed", impatient=True),
    Case("h2c, half a body", [_WISH_HEAD + _B[:5]], "408 closed", impatient=True),
]
