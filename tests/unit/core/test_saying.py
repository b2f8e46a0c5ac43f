from __future__ import annotations

from service.core.saying import Amount, capital, joined, listed, say, sentences


def test_a_sentence_is_its_english_text_and_remembers_template_and_parameters() -> None:
    said = say("The tread is {depth} deep.", depth=Amount(1.64, "mm", 1))
    assert said == "The tread is 1.6 mm deep."
    assert (said.template, said.parameters["depth"]) == ("The tread is {depth} deep.", "1.6 mm")


def test_numbers_have_a_true_minus_no_idle_zeros_and_no_zero_with_a_sign() -> None:
    assert [Amount(-1.25, "%", 1), Amount(2.0, "mm", 1), Amount(-0.04, "%", 1), Amount(3.0, signed=True)] == [
        "−1.2 %",
        "2 mm",
        "0 %",
        "+3",
    ]
    assert Amount(8.0, "in", bare=True) == "8"
    assert Amount(0.4, "bar", 1) == "0.4 bar"


def test_texts_are_joined_as_english_joins_them() -> None:
    assert sentences(say("One."), "", say("Two.")) == "One. Two."
    assert listed(["a"]) == "a"
    assert listed(["a", "b", "c"]) == "a, b and c"
    assert capital(joined(["air", "water"], "; ")) == "Air; water"
    assert capital("plain text") == "Plain text"
