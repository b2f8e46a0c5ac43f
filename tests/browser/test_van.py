"""A van with twin wheels is judged on the page by what its tyres carry in pairs."""

from tests.browser.examples import VAN, Reader


def test_twin_wheels_carry_less_than_single_ones(visit):
    # Load indices 104/102 are 900 and 850 kg (UN R54 annex 2): twice two of 850 kg are less than 3550 kg.
    reader = Reader(visit(), VAN)
    reader.type(("/candidate/rear/tyre/size", "195/70 R16C 104/102R"), column=0)
    assert reader.verdict == "Do not fit"
    assert "The axle's tyres carry 3400 kg" in reader.page.inner_text("#findings")
