"""What an operator may set, all by environment variables `FITMENT_*`; a variable that is unknown is refused."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping, Sequence
from typing import Annotated, Any, Literal, Self

from pydantic import (
    AfterValidator,
    AliasChoices,
    BeforeValidator,
    Field,
    SecretStr,
    ValidationError,
    field_validator,
    model_validator,
)
from pydantic_core import ErrorDetails
from pydantic_settings import BaseSettings, NoDecode, SettingsConfigDict

PREFIX = "FITMENT_"
_KEY_ENTRY = re.compile(r"[a-z0-9][a-z0-9-]{0,31}:[0-9a-f]{64}")
# What a browser sends as `Origin` (RFC 6454, 7): scheme and host in lower case, no path, not even a slash.
_ORIGIN = re.compile(r"\*|null|[a-z][a-z0-9+.-]*://([a-z0-9_.-]+|\[[0-9a-f:.]+\])(:[0-9]{1,5})?")
# The `Host` of a request without its port (RFC 9110, 7.2), or all names below one.
_HOST = re.compile(r"\*|(\*\.)?[a-z0-9_-]+(\.[a-z0-9_-]+)*\.?|\[[0-9a-f:.]+\]", re.IGNORECASE)
# What is said of a value that does not do, by the kind of the fault; any other kind keeps the words of the library.
_FAULTS = {
    "int_parsing": "a whole number is expected",
    "float_parsing": "a number is expected",
    "bool_parsing": "true or false is expected",
    "greater_than": "a number above {gt} is expected",
    "greater_than_equal": "{ge} or more is expected",
    "less_than_equal": "{le} or less is expected",
    "finite_number": "a finite number is expected",
    "literal_error": "{expected} is expected",
    "string_pattern_mismatch": "a number of 1 or more and second, minute, hour or day are expected, such as 50/second",
    "value_error": "{error}",
}


class BadSettings(ValueError):
    """The environment gives settings that the service cannot run with; says which and why, never their values."""


def _split(value: object) -> object:
    """Return the parts of a comma-separated text; anything else as it is."""
    if isinstance(value, str):
        return tuple(part.strip() for part in value.split(",") if part.strip())
    return value


def _given(value: object) -> object:
    """Return nothing for an empty text; anything else as it is."""
    return None if value == "" else value


def _origins(entries: tuple[str, ...]) -> tuple[str, ...]:
    if all(map(_ORIGIN.fullmatch, entries)):
        return entries
    raise ValueError(
        "each entry is scheme and host in lower case, without a path or a slash at the end, such as "
        "https://shop.example, or * for all"
    )


def _hosts(entries: tuple[str, ...]) -> tuple[str, ...]:
    if not entries:
        raise ValueError("a host name at least is expected, or * for all; without one nobody would get an answer")
    if all(map(_HOST.fullmatch, entries)):
        return entries
    raise ValueError(
        "each entry is a host name without scheme, port or path, such as api.shop.example, *.shop.example for any "
        "name below, or * for all"
    )


Words = Annotated[tuple[str, ...], NoDecode, BeforeValidator(_split)]
# Not a number and endless are texts that Python reads as numbers.
Seconds = Annotated[float, Field(allow_inf_nan=False)]


class Settings(BaseSettings):
    """The settings of one process, fixed for its life."""

    model_config = SettingsConfigDict(env_prefix=PREFIX, frozen=True, extra="forbid", populate_by_name=True)

    host: str = Field("127.0.0.1", description="Address to listen on; 0.0.0.0 in a container.")
    port: int = Field(
        8000,
        ge=0,
        le=65535,
        validation_alias=AliasChoices("FITMENT_PORT", "PORT"),
        description="Port to listen on; PORT is understood too; 0 lets the system choose.",
    )
    log_level: Literal["debug", "info", "warning", "error"] = Field("info", description="Least level that is logged.")
    access_log: bool = Field(default=True, description="One JSON line per request, without payload and keys.")
    docs: bool = Field(default=True, description="Serve /docs and /openapi.json.")
    metrics: bool = Field(default=True, description="Serve /metrics.")
    metrics_port: Annotated[int | None, BeforeValidator(_given)] = Field(
        None,
        ge=1,
        le=65535,
        description="A port of its own for /metrics, and for the probes beside the other; empty: the same.",
    )
    telemetry: bool = Field(
        default=False,
        description="Send traces, by route template and without payload; needs the extra `telemetry`. Where to and how "
        "many say the standard variables OTEL_EXPORTER_OTLP_ENDPOINT and OTEL_TRACES_SAMPLER.",
    )
    trusted_hosts: Annotated[Words, AfterValidator(_hosts)] = Field(
        ("*",), description="Host names answered to, comma-separated; *.example.org takes any name below, * all."
    )
    cors_origins: Annotated[Words, AfterValidator(_origins)] = Field(
        (),
        description="Origins whose pages may call, comma-separated, such as https://shop.example; * all; empty none.",
    )
    cors_max_age_s: int = Field(600, ge=0, le=86400, description="How long browsers may keep a preflight answer.")
    api_keys: Annotated[tuple[SecretStr, ...], NoDecode, BeforeValidator(_split)] = Field(
        (),
        description="Entries NAME:SHA256 of the keys that open /v1, comma-separated; empty: open to all. "
        "Make one with `printf %s KEY | sha256sum`; a key should have 128 random bits.",
    )
    keys_required: bool = Field(
        default=False, description="Do not start without a key: an empty variable would leave the service open to all."
    )
    api_key_rate: str = Field(
        "50/second",
        pattern=r"^0*[1-9][0-9]{0,6}/(second|minute|hour|day)$",
        description="What each key may ask, in any such time.",
    )
    rate_storage: SecretStr = Field(
        SecretStr("memory://"),
        description="Where rates are counted: memory://, or redis://... for all replicas together; while that does not "
        "answer, each replica counts by itself.",
    )
    queue_length: int = Field(
        16,
        ge=0,
        le=10_000,
        description="Long jobs (compare, search, rims, plan, drawings, reports, lists of checks) that may wait; "
        "beyond it 503 with Retry-After.",
    )
    check_queue_length: int = Field(
        1024, ge=0, le=10_000, description="Checks that may wait; beyond it 503 with Retry-After."
    )
    proxy_count: int = Field(
        0,
        ge=0,
        le=16,
        description="Proxies in front that each append to X-Forwarded-For. Callers without a key share the queues by "
        "address: what the first of them saw; with 0 the connection's, and then all behind one proxy are one caller.",
    )
    body_space_mib: int = Field(
        64,
        ge=8,
        le=65_536,
        description="Memory for large bodies, on their way in or in the queue, all together; beyond it 503 with "
        "Retry-After.",
    )
    answer_space_mib: int = Field(
        32,
        ge=8,
        le=65_536,
        description="Memory for answers that clients are slow to take, all together; beyond it the longest wait ends.",
    )
    max_connections: int = Field(
        1000, ge=1, le=1_000_000, description="Connections at the same time; one more is told 503 and closed."
    )
    retry_after_s: int = Field(
        2, ge=1, le=600, description="Retry-After when the queue or the space for bodies is full."
    )
    head_timeout_s: Seconds = Field(10.0, gt=0, le=600, description="Time for a request's head to arrive.")
    body_timeout_s: Seconds = Field(10.0, gt=0, le=600, description="Time for a request's body to arrive.")
    keep_alive_s: int = Field(
        75,
        ge=1,
        le=3600,
        description="How long an idle connection is kept; longer than the balancer in front keeps it.",
    )
    drain_s: Seconds = Field(
        2.0, ge=0, le=300, description="After SIGTERM: time in which readiness says 503 and connections are let go."
    )
    stop_timeout_s: int = Field(10, ge=1, le=300, description="After the drain: longest wait for requests in flight.")

    @field_validator("api_keys")
    @classmethod
    def _well_formed(cls, entries: tuple[SecretStr, ...]) -> tuple[SecretStr, ...]:
        names = set()
        for entry in entries:
            if not _KEY_ENTRY.fullmatch(entry.get_secret_value()):
                raise ValueError("each entry is NAME:SHA256, the hash as 64 lower-case hexadecimal digits")
            names.add(entry.get_secret_value().partition(":")[0])
        if len(names) != len(entries):
            raise ValueError("each key has a name of its own")
        return entries

    @model_validator(mode="after")
    def _go_together(self) -> Self:
        faults = []
        if self.keys_required and not self.api_keys:
            faults.append("FITMENT_API_KEYS: none is given, and FITMENT_KEYS_REQUIRED asks for one at least")
        if self.metrics_port is not None and not self.metrics:
            faults.append("FITMENT_METRICS_PORT: a port for /metrics, which FITMENT_METRICS=false does not serve")
        if self.metrics_port is not None and self.metrics_port == self.port:
            faults.append("FITMENT_METRICS_PORT: another port than FITMENT_PORT is expected, or none for the same")
        if faults:
            raise ValueError("\n".join(faults))
        return self


def load_settings(environ: Mapping[str, str], **given: Any) -> Settings:
    """Return the settings that the process's environment gives, and `given` in place of some.

    Raises
    ------
    BadSettings
        When a value does not do, or a variable with the prefix is none that any setting reads.
    """
    known = [PREFIX + name.upper() for name in Settings.model_fields]
    faults = [
        _unknown(name, known)
        for name in sorted(environ)
        if name.upper().startswith(PREFIX) and name.upper() not in known
    ]
    try:
        settings = Settings(**given)
    except ValidationError as error:
        # The values stay out: one of them may be a secret.
        faults += [_fault(item) for item in error.errors(include_input=False)]
    if faults:
        raise BadSettings("\n".join(faults))
    return settings


def _unknown(name: str, known: Sequence[str]) -> str:
    nearest = difflib.get_close_matches(name.upper(), known, n=1)
    hint = f"did you mean {nearest[0]}?" if nearest else f"known are {', '.join(known)}"
    return f"{name} is no setting of this service; {hint}"


def _fault(item: ErrorDetails) -> str:
    words = _FAULTS.get(item["type"])
    said = item["msg"] if words is None else words.format_map(item.get("ctx", {}))
    # What is wrong with several names them itself.
    return f"{_variable(item['loc'])}: {said}" if item["loc"] else said


def _variable(location: tuple[int | str, ...]) -> str:
    name = str(location[0])
    return name if name == "PORT" or name.startswith(PREFIX) else PREFIX + name.upper()


def shown(settings: Settings) -> str:
    """Return the settings as lines `FITMENT_NAME=value  # description`, without secrets."""
    lines = []
    for name, field in Settings.model_fields.items():
        value = getattr(settings, name)
        if name == "api_keys":
            value = tuple(f"{entry.get_secret_value().partition(':')[0]}:***" for entry in value)
        text = ",".join(value) if isinstance(value, tuple) else "" if value is None else str(value)
        lines.append(f"{PREFIX}{name.upper()}={text}  # {field.description}")
    return "\n".join(lines)
