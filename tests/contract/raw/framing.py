"""Where a body ends: lengths, chunks, and messages that two readers could cut in two ways.

Expected answers by RFC 9112, the section beside each group. Where it leaves a choice between repair and refusal,
the refusal is expected: what another reader on the way may repair differently is how requests are smuggled.
"""

from tests.contract.raw.case import CHUNKED, ECHO, LAST, LIVE, Case, body, chunk, echo_head, sized

_B = body()
_N = b"%d" % len(_B)
_SPLIT = chunk(_B[:10]) + chunk(_B[10:])
_BIG = b"a" * 40_000

# 6.2 and 6.3: Content-Length.
LENGTHS = [
    Case("length", [sized()], "200=4 open"),
    Case("length, body in a packet of its own", [echo_head(len(_B)), _B], "200=4 open"),
    Case("length, body in three packets", [echo_head(len(_B)), _B[:1], _B[1:9], _B[9:]], "200=4 open"),
    Case("length with blanks round it", [ECHO + b"Content-Length:  " + _N + b" \t\r\n\r\n" + _B], "200=4 open"),
    Case("length with leading zeros", [ECHO + b"Content-Length: 00" + _N + b"\r\n\r\n" + _B], "200=4 open"),
    Case("length 0", [ECHO + b"Content-Length: 0\r\n\r\n"], "400 open"),
    Case("no length and no chunks", [ECHO + b"\r\n"], "400 open"),
    Case("length shorter than the body", [echo_head(len(_B) - 1) + _B], "400 400 closed"),
    Case("two lengths", [ECHO + b"Content-Length: 3\r\nContent-Length: 4\r\n\r\nabcd"], "400 closed"),
    Case("the same length twice", [ECHO + b"Content-Length: 4\r\nContent-Length: 4\r\n\r\nabcd"], "400 closed"),
    Case("a list of lengths", [ECHO + b"Content-Length: 4, 4\r\n\r\nabcd"], "400 closed"),
    Case("length with a sign", [ECHO + b"Content-Length: +4\r\n\r\nabcd"], "400 closed"),
    Case("negative length", [ECHO + b"Content-Length: -4\r\n\r\nabcd"], "400 closed"),
    Case("length in hexadecimal", [ECHO + b"Content-Length: 0x4\r\n\r\nabcd"], "400 closed"),
    Case("length with a blank inside", [ECHO + b"Content-Length: 1 0\r\n\r\nabcd"], "400 closed"),
    Case("empty length", [ECHO + b"Content-Length:\r\n\r\nabcd"], "400 closed"),
    Case("length beyond 64 bits", [ECHO + b"Content-Length: 18446744073709551617\r\n\r\na"], "400 closed"),
    Case("length over the limit", [echo_head(10_000_000)], "413 unread"),
]

# 7.1: chunks. 6.1: Transfer-Encoding.
CHUNKS = [
    Case("one chunk", [CHUNKED + chunk(_B) + LAST], "200=4 open"),
    Case("two chunks", [CHUNKED + _SPLIT + LAST], "200=4 open"),
    Case("chunks of a byte", [CHUNKED + b"".join(chunk(b"%c" % byte) for byte in _B) + LAST], "200=4 open"),
    Case(
        "chunks cut anywhere",
        [CHUNKED[:-1], b"\n3", b"\r", b"\n" + _B[:2], _B[2:3] + b"\r\n", chunk(_B[3:]) + b"0\r", b"\n\r", b"\n"],
        "200=4 open",
    ),
    Case(
        "chunk size in capitals and zeros",
        [CHUNKED + b"000A\r\n" + _B[:10] + b"\r\n" + chunk(_B[10:]) + LAST],
        "200=4 open",
    ),
    Case("chunked in capitals", [ECHO + b"TRANSFER-ENCODING: CHUNKED\r\n\r\n" + chunk(_B) + LAST], "200=4 open"),
    Case("chunk extension", [CHUNKED + chunk(_B, b";a=b") + b"0;last\r\n\r\n"], "200=4 open"),
    Case("quoted chunk extension", [CHUNKED + chunk(_B, b';a="b;c"') + LAST], "200=4 open"),
    Case("long chunk extension", [CHUNKED + chunk(_B, b";a=" + _BIG[:30_000]) + LAST], "200=4 open"),
    Case("endless chunk extension", [CHUNKED + b"5;a=" + _BIG, _BIG], "431 closed"),
    Case("chunk extension with a line feed", [CHUNKED + chunk(_B, b";a\nb") + LAST], "400 closed"),
    Case("chunk size with a sign", [CHUNKED + b"+5\r\nabcde\r\n" + LAST], "400 closed"),
    Case("negative chunk size", [CHUNKED + b"-5\r\nabcde\r\n" + LAST], "400 closed"),
    Case("chunk size with 0x", [CHUNKED + b"0x5\r\nabcde\r\n" + LAST], "400 closed"),
    Case("chunk size beyond 64 bits", [CHUNKED + b"10000000000000000\r\na"], "400 closed"),
    Case("empty chunk size", [CHUNKED + b"\r\nabcde\r\n" + LAST], "400 closed"),
    Case("chunk longer than its size", [CHUNKED + b"3\r\nabcde\r\n" + LAST], "400 closed"),
    Case("chunk without its line end", [CHUNKED + b"5\r\nabcde" + LAST], "400 closed"),
    Case("chunk size ended by a line feed", [CHUNKED + b"%x\n" % len(_B) + _B + b"\r\n" + LAST], "400 closed"),
    Case("chunk data ended by a line feed", [CHUNKED + b"%x\r\n" % len(_B) + _B + b"\n" + LAST], "400 closed"),
    Case("chunk size followed by a blank", [CHUNKED + b"%x \r\n" % len(_B) + _B + b"\r\n" + LAST], "400 closed"),
]

# 6.1, 6.3 and 11.2: what a request is smuggled with.
SMUGGLING = [
    Case("chunks and length", [CHUNKED[:-2] + b"Content-Length: 4\r\n\r\n" + LAST + LIVE], "400 closed"),
    Case("length and chunks", [ECHO + b"Content-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n" + LAST], "400 closed"),
    Case(
        "length 0 and chunks", [ECHO + b"Content-Length: 0\r\nTransfer-Encoding: chunked\r\n\r\n" + LAST], "400 closed"
    ),
    Case("identity", [ECHO + b"Transfer-Encoding: identity\r\n\r\n" + LIVE], "400 closed"),
    Case("length and identity", [ECHO + b"Content-Length: 4\r\nTransfer-Encoding: identity\r\n\r\nabcd"], "400 closed"),
    Case("another coding", [ECHO + b"Transfer-Encoding: gzip\r\n\r\n" + LIVE], "400 closed"),
    Case("chunked, then another coding", [ECHO + b"Transfer-Encoding: chunked, gzip\r\n\r\n" + LAST], "400 closed"),
    Case("another coding, then chunked", [ECHO + b"Transfer-Encoding: gzip, chunked\r\n\r\n" + LAST], "400 closed"),
    Case("chunked twice", [CHUNKED[:-2] + b"Transfer-Encoding: chunked\r\n\r\n" + chunk(_B) + LAST], "400 closed"),
    Case("a word like chunked", [ECHO + b"Transfer-Encoding: xchunked\r\n\r\n" + LAST], "400 closed"),
    Case("chunked in quotes", [ECHO + b'Transfer-Encoding: "chunked"\r\n\r\n' + LAST], "400 closed"),
    Case("chunked behind a vertical tab", [ECHO + b"Transfer-Encoding: \x0bchunked\r\n\r\n" + LAST], "400 closed"),
    Case("a blank before the colon", [ECHO + b"Transfer-Encoding : chunked\r\n\r\n" + LAST], "400 closed"),
    Case("a blank before the first field", [b"POST /v1/echo HTTP/1.1\r\n Host: a\r\n\r\n"], "400 closed"),
    Case("a blank before a framing field", [ECHO + b" Transfer-Encoding: chunked\r\n\r\n" + LAST], "400 closed"),
    Case("folded framing field", [ECHO + b"Transfer-Encoding:\r\n chunked\r\n\r\n" + LAST], "400 closed"),
    Case("folded field", [LIVE[:-2] + b"X: a\r\n b\r\n\r\n"], "400 closed"),
    Case("carriage return in a field", [LIVE[:-2] + b"X: a\rContent-Length: 4\r\n\r\nabcd"], "400 closed"),
    Case("NUL in a field", [LIVE[:-2] + b"X: a\x00b\r\n\r\n"], "400 closed"),
    Case("lines ended by a line feed", [LIVE.replace(b"\r\n", b"\n")], "400 closed"),
    Case("one line ended by a line feed", [LIVE[:-2] + b"X: a\nContent-Length: 4\r\n\r\nabcd"], "400 closed"),
    Case("a field without a name", [LIVE[:-2] + b": a\r\n\r\n"], "400 closed"),
    Case("a field with a bracket in its name", [LIVE[:-2] + b"X(: a\r\n\r\n"], "400 closed"),
    Case("chunks in HTTP/1.0", [CHUNKED.replace(b"HTTP/1.1", b"HTTP/1.0") + chunk(_B) + LAST], "400 closed"),
]
