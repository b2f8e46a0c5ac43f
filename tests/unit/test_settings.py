"""Settings: refused when unknown or unfit, shown without secrets."""

import hashlib

import pytest
from pydantic import ValidationError

from service.settings import BadSettings, Settings, load_settings, shown

ENTRY = "shop:" + hashlib.sha256(b"key").hexdigest()


@pytest.fixture(autouse=True)
def _clean_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("PORT", "FITMENT_PORT", "FITMENT_HOST"):
        monkeypatch.delenv(name, raising=False)


def load(monkeypatch: pytest.MonkeyPatch, **variables: str) -> Settings:
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    return load_settings(variables)


def test_an_unknown_variable_is_refused_with_the_nearest_name(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(BadSettings, match=r"FITMENT_DRAIN is no setting.*did you mean FITMENT_DRAIN_S"):
        load(monkeypatch, FITMENT_DRAIN="1")


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("FITMENT_PORT", "70000"),
        ("FITMENT_LOG_LEVEL", "loud"),
        ("FITMENT_API_KEYS", "shop:plain-text-key"),
        ("FITMENT_API_KEYS", f"{ENTRY},{ENTRY}"),
        ("FITMENT_API_KEY_RATE", "often"),
        ("FITMENT_DRAIN_S", "-1"),
        ("FITMENT_BODY_TIMEOUT_S", "nan"),
        # An origin has neither path nor slash, and browsers write it in lower case (RFC 6454, 4 and 7).
        ("FITMENT_CORS_ORIGINS", "https://shop.example/"),
        ("FITMENT_CORS_ORIGINS", "other.example"),
        ("FITMENT_CORS_ORIGINS", "https://Shop.example"),
        # The header `Host` names no scheme and no path (RFC 9110, 7.2); its port is not looked at.
        ("FITMENT_TRUSTED_HOSTS", "https://a.example"),
        ("FITMENT_TRUSTED_HOSTS", "a.example/b"),
        ("FITMENT_TRUSTED_HOSTS", "a.example:8000"),
        ("FITMENT_API_KEY_RATE", "0/minute"),
    ],
)
def test_an_unfit_value_is_refused_by_name_and_not_repeated(
    monkeypatch: pytest.MonkeyPatch, name: str, value: str
) -> None:
    with pytest.raises(BadSettings, match=f"^{name}: ") as caught:
        load(monkeypatch, **{name: value})
    assert value not in str(caught.value)


def test_without_a_host_name_nobody_would_be_answered(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(BadSettings, match=r"^FITMENT_TRUSTED_HOSTS: a host name at least is expected"):
        load(monkeypatch, FITMENT_TRUSTED_HOSTS="")


@pytest.mark.parametrize("value", ["nan", "inf"])
def test_what_is_no_number_or_has_no_end_is_told_so(monkeypatch: pytest.MonkeyPatch, value: str) -> None:
    with pytest.raises(BadSettings, match=r"^FITMENT_DRAIN_S: a finite number is expected$"):
        load(monkeypatch, FITMENT_DRAIN_S=value)


@pytest.mark.parametrize(
    ("variables", "name"),
    [
        ({"FITMENT_METRICS": "false", "FITMENT_METRICS_PORT": "8979"}, "FITMENT_METRICS_PORT"),
        ({"FITMENT_PORT": "8979", "FITMENT_METRICS_PORT": "8979"}, "FITMENT_METRICS_PORT"),
        ({"FITMENT_KEYS_REQUIRED": "true"}, "FITMENT_API_KEYS"),
    ],
)
def test_settings_that_cannot_go_together_are_refused(
    monkeypatch: pytest.MonkeyPatch, variables: dict[str, str], name: str
) -> None:
    with pytest.raises(BadSettings, match=f"^{name}: "):
        load(monkeypatch, **variables)


def test_faults_beside_an_unknown_variable_are_told_too(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(BadSettings) as caught:
        load(monkeypatch, FITMENT_DRAIN="1", FITMENT_QUEUE_LENGTH="many", FITMENT_PROXY_COUNT="-1")
    assert [line.split()[0].rstrip(":") for line in str(caught.value).splitlines()] == [
        "FITMENT_DRAIN",
        "FITMENT_QUEUE_LENGTH",
        "FITMENT_PROXY_COUNT",
    ]


# Origins: RFC 6454, 6.2 and 7.1; addresses of version 6 stand in brackets (RFC 3986, 3.2.2).
@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("cors_origins", "https://shop.example,http://localhost:3000,http://[::1]:8080"),
        ("cors_origins", "*"),
        ("trusted_hosts", "api.shop.example,*.shop.example,127.0.0.1,[::1],fitment_service,A.Example"),
    ],
)
def test_a_list_that_works_is_taken(monkeypatch: pytest.MonkeyPatch, name: str, value: str) -> None:
    assert getattr(load(monkeypatch, **{f"FITMENT_{name.upper()}": value}), name) == tuple(value.split(","))


def test_what_the_command_line_says_is_held_to_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FITMENT_PORT", "8123")
    assert load_settings({}, port=8124).port == 8124
    with pytest.raises(BadSettings, match=r"^FITMENT_PORT: 65535 or less is expected$"):
        load_settings({}, port=70000)


# Ports have 16 bits (RFC 9293, 3.1), a day 86,400 s; the others are the project's own.
WHOLE = {
    "PORT": (0, 65535),
    "METRICS_PORT": (1, 65535),
    "CORS_MAX_AGE_S": (0, 86400),
    "QUEUE_LENGTH": (0, 10000),
    "CHECK_QUEUE_LENGTH": (0, 10000),
    "PROXY_COUNT": (0, 16),
    "BODY_SPACE_MIB": (8, 65536),
    "ANSWER_SPACE_MIB": (8, 65536),
    "MAX_CONNECTIONS": (1, 1000000),
    "RETRY_AFTER_S": (1, 600),
    "KEEP_ALIVE_S": (1, 3600),
    "STOP_TIMEOUT_S": (1, 300),
}
# Waiting no time at all for a request would refuse all of them.
IN_PARTS = {"HEAD_TIMEOUT_S": (0.001, 600.0), "BODY_TIMEOUT_S": (0.001, 600.0), "DRAIN_S": (0.0, 300.0)}


@pytest.mark.parametrize("name", [*WHOLE, *IN_PARTS])
def test_a_number_is_taken_up_to_its_ends_and_refused_beyond(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    low, high = (WHOLE | IN_PARTS)[name]
    step = 1 if name in WHOLE else 0.001
    for value in (low, high):
        settings = load(monkeypatch, **{f"FITMENT_{name}": str(value)})
        assert getattr(settings, name.lower()) == value
    for value in (low - step, high + step):
        with pytest.raises(BadSettings, match=f"^FITMENT_{name}: "):
            load(monkeypatch, **{f"FITMENT_{name}": str(value)})


def test_every_number_has_its_ends_here() -> None:
    bounded = {name.upper() for name, field in Settings.model_fields.items() if field.annotation in (int, float)}
    assert bounded <= WHOLE.keys() | IN_PARTS.keys()


def test_lists_are_separated_by_commas(monkeypatch: pytest.MonkeyPatch) -> None:
    settings = load(monkeypatch, FITMENT_TRUSTED_HOSTS="a.example, b.example")
    assert settings.trusted_hosts == ("a.example", "b.example")


def test_the_port_of_the_platform_is_understood(monkeypatch: pytest.MonkeyPatch) -> None:
    assert load(monkeypatch, PORT="8123").port == 8123


def test_our_own_port_comes_before_that_of_the_platform(monkeypatch: pytest.MonkeyPatch) -> None:
    assert load(monkeypatch, PORT="8123", FITMENT_PORT="8124").port == 8124


def test_what_is_shown_holds_no_secret(monkeypatch: pytest.MonkeyPatch) -> None:
    settings = load(monkeypatch, FITMENT_API_KEYS=ENTRY, FITMENT_RATE_STORAGE="redis://:pass-word@redis.example:6379/0")
    text = shown(settings)
    assert "FITMENT_API_KEYS=shop:***" in text
    assert ENTRY not in text
    assert "pass-word" not in text


def test_every_setting_says_what_it_is_for() -> None:
    assert [name for name, field in Settings.model_fields.items() if not field.description] == []


def test_settings_do_not_change() -> None:
    with pytest.raises(ValidationError):
        Settings().port = 1  # type: ignore[misc] # that is the point
