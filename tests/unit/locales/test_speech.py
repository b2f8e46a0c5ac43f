from __future__ import annotations

from service.core.saying import Amount, Said, capital, listed, say, sentences
from service.locales.speech import Speech

DEPTH = say("The tread is {depth} deep.", depth=Amount(-1.6, "mm", 1))
GERMAN = Speech(
    "de",
    "metric",
    {
        "The tread is {depth} deep.": "Das Profil ist {depth} tief.",
        "{first} and {last}": "{first} und {last}",
        "unit|in": "Zoll",
    },
)


def test_english_in_metric_units_is_the_text_itself() -> None:
    assert Speech("en", "metric", {}).say(DEPTH) == DEPTH


def test_template_numbers_and_units_are_said_in_the_language() -> None:
    assert GERMAN.say(DEPTH) == "Das Profil ist −1,6 mm tief."
    assert GERMAN.say(Amount(1234.5, "in", 1)) == "1234,5 Zoll"
    assert GERMAN.say(capital(listed(["a", say("x"), "c"]))) == "A, x und c"
    assert GERMAN.say("205/55 R16") == "205/55 R16"
    # A number without a unit, and one whose unit stands elsewhere: nothing behind either.
    assert (GERMAN.say(Amount(7.5, digits=1)), GERMAN.say(Amount(7.5, "in", 1, bare=True))) == ("7,5", "7,5")


def test_braces_of_a_text_without_parameters_stay() -> None:
    assert GERMAN.say(Said("{curly}", {})) == "{curly}"


def test_a_sentence_within_a_sentence_is_said_too() -> None:
    assert GERMAN.say(sentences(DEPTH, say("No."))) == "Das Profil ist −1,6 mm tief. No."


def test_imperial_units_by_their_legal_factors() -> None:
    # 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 mile = 1609.344 m: international agreement of 1959; psi follows.
    imperial = Speech("en", "imperial", {})
    amounts = [Amount(25.4, "mm"), Amount(250, "kPa"), Amount(453.59237, "kg"), Amount(160.9344, "km/h")]
    assert [imperial.say(each) for each in amounts] == ["1 in", "36.3 psi", "1000 lb", "100 mph"]
    assert imperial.say(Amount(2.4, "%", 1)) == "2.4 %"
    # 80 / 1.609344 = 49.71 and 475 / 0.45359237 = 1047.2: whole numbers stay whole.
    assert [imperial.say(Amount(80, "km/h")), imperial.say(Amount(475, "kg"))] == ["50 mph", "1047 lb"]
    # A tenth of a millimetre is four thousandths of an inch: 2 mm / 25.4 = 0.0787 in.
    assert imperial.say(Amount(2.0, "mm", 1)) == "0.079 in"
    # 150 / 6.4516 = 23.250 and a tenth of a square inch is 0.6 cm2: one decimal more than ours.
    assert imperial.say(Amount(150.0, "cm²")) == "23.3 sq in"
