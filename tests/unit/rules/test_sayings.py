"""What a pack says to callers can be said in another language: it is a message id of the catalogues."""

import pytest

from service.core.saying import Said, say
from service.rules.reader import default_packs, load_packs
from tests.support.sayings import unsaid
from tests.support.sentences import sentences
from tests.unit.rules.sound_pack import SOUND, write

PACKS = default_packs().values()


@pytest.fixture(scope="module")
def known():
    return {each.id for each in sentences()}


@pytest.mark.parametrize("pack", PACKS, ids=lambda pack: pack.id)
def test_every_sentence_of_a_pack_is_one_of_the_catalogues(pack, known):
    said = [pack.title, *pack.notes, *pack.not_held]
    said += [text for rule in pack.rules for text in (rule.title, rule.message, rule.place)]
    said += [each.title for each in (*pack.speedometers, *pack.allowances)]
    for each in said:
        assert isinstance(each, Said), each
        assert each.template in known
        assert unsaid(each) == []


@pytest.mark.parametrize("pack", PACKS, ids=lambda pack: pack.id)
def test_what_warns_of_a_text_not_read_is_said(pack, known):
    for rule in pack.rules:
        assert not rule.caveat or (isinstance(rule.caveat, Said) and rule.caveat.template in known)


@pytest.mark.parametrize("pack", PACKS, ids=lambda pack: pack.id)
def test_how_far_the_text_of_a_rule_was_read_is_said(pack, known):
    found = [basis for rule in pack.speedometers for basis in (rule.basis, rule.test_speeds_basis)]
    # Common practice has neither a day nor a text: its title says all.
    for basis in (each for each in found if each.kind == "regulation"):
        assert isinstance(basis.reference, Said)
        assert basis.reference.template in known


def test_a_place_without_a_preposition_of_its_own_gets_one_in_each_language(tmp_path, known):
    rule = next(each for each in load_packs(write(tmp_path, SOUND))["zz"].rules if each.pack == "zz")
    assert rule.place == say("in {country}", country=rule.place.parameters["country"])
    assert rule.place.template in known
    assert isinstance(rule.place.parameters["country"], Said)
