"""What is wrong stands at its field, is told to those who do not see it, and goes when it is mended."""

TYRE = "/candidate/rear/tyre/size"
FIELD = f"[name='{TYRE}']"


def described(page, pointer):
    """Return what a screen reader adds to the field."""
    return page.evaluate(
        "(field) => document.getElementById(field.getAttribute('aria-describedby')).textContent",
        page.query_selector(f"[name='{pointer}']"),
    )


def test_a_designation_that_cannot_be_read_is_explained_at_its_field(visit):
    seen = visit()
    page = seen.open()
    seen.change(TYRE, "285/3O R19")
    assert page.get_attribute(FIELD, "aria-invalid") == "true"
    assert "cannot be read at position 5" in described(page, TYRE)


def test_the_words_stand_right_below_the_field(visit):
    seen = visit()
    page = seen.open()
    seen.change(TYRE, "285/3O R19")
    field, fault = (page.locator(each).bounding_box() for each in (FIELD, f"{FIELD} + .fault"))
    assert 0 <= fault["y"] - (field["y"] + field["height"]) < 8


def test_what_is_missing_is_asked_for_at_its_field(visit):
    seen = visit()
    page = seen.open()
    seen.change("/vehicle/max_speed_kmh", "")
    assert "required" in described(page, "/vehicle/max_speed_kmh")


def test_what_is_no_number_is_explained_at_its_field(visit):
    seen = visit()
    page = seen.open()
    seen.change("/vehicle/front/max_axle_mass_kg", "heavy")
    assert "number" in described(page, "/vehicle/front/max_axle_mass_kg")


def test_a_comma_is_taken_for_a_decimal_point(visit):
    seen = visit()
    page = seen.open()
    seen.change("/candidate/front/tyre/tread_depth_mm", "7,5")
    assert '"tread_depth_mm":7.5' in page.inner_text("#curl")


def test_a_fault_goes_when_it_is_mended(visit):
    seen = visit()
    page = seen.open()
    seen.change(TYRE, "285/3O R19")
    seen.change(TYRE, "285/30 R19 98Y XL")
    assert page.get_attribute(FIELD, "aria-invalid") is None
    assert described(page, TYRE) == ""
    assert page.locator("#general").is_hidden()


def test_several_faults_are_counted_and_listed_with_links_to_their_fields(visit):
    seen = visit()
    page = seen.open()
    seen.change(TYRE, "285/3O R19")
    seen.change("/candidate/front/rim/size", "nine inches")
    assert page.inner_text("#verdict-words") == "2 fields to correct"
    page.click("#general >> text=Candidate, rear axle, Tyre")
    assert page.evaluate("document.activeElement.name") == TYRE


def test_a_fault_in_a_folded_part_unfolds_it(visit):
    seen = visit()
    page = seen.open()
    page.click("details.more > summary")
    seen.change("/vehicle/front/hub/bolt_circle", "five")
    page.click("details.more > summary")
    seen.change("/vehicle/max_speed_kmh", "230")
    assert page.locator("[name='/vehicle/front/hub/bolt_circle']").is_visible()


def test_while_a_field_is_to_be_mended_there_is_nothing_for_the_workshop(visit):
    seen = visit()
    page = seen.open()
    seen.change(TYRE, "285/3O R19")
    assert page.locator("#actions").is_hidden()
    seen.change(TYRE, "285/30 R19 98Y XL")
    assert page.locator("#actions").is_visible()


def test_an_answer_to_an_earlier_question_looks_other_than_one_to_this(visit):
    seen = visit()
    page = seen.open()
    ink = "getComputedStyle(document.querySelector('#findings li')).color"
    before = page.evaluate(ink)
    seen.change(TYRE, "285/3O R19")
    assert page.evaluate(ink) != before
    seen.change(TYRE, "285/30 R19 98Y XL")
    assert page.evaluate(ink) == before


def test_a_service_that_cannot_be_reached_leaves_nothing_for_the_workshop(visit):
    seen = visit()
    page = seen.open()
    seen.context.set_offline(True)
    page.fill(f"[name='{TYRE}']", "285/30 R19 98Y XL ")
    page.locator("#verdict-words", has_text="No answer").wait_for()
    assert page.locator("#actions").is_hidden()
