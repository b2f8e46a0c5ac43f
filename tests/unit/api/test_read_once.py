"""Within one request nothing is read twice, though nothing is remembered from one request to the next."""

from pydantic import TypeAdapter

from service.api.schemas.request import CheckRequest
from tests.support.cases import changed, saloon

READ = TypeAdapter(CheckRequest).validator.validate_python
SIZE = "225/45 R17 94W"


def fitted(body, context):
    vehicle = READ(body, context=context).vehicle
    return vehicle.front.fitted, vehicle.rear.fitted


def both_axles_on(size):
    return changed(saloon(), {f"/vehicle/{axle}/fitted/tyre/size": size for axle in ("front", "rear")})


def test_a_designation_that_stands_twice_is_read_once():
    front, rear = fitted(both_axles_on(SIZE), {})
    assert front.tyre.designation() is rear.tyre.designation()


def test_the_same_designation_of_two_requests_is_read_for_each():
    first, second = (fitted(both_axles_on(SIZE), {})[0].tyre.designation() for _ in range(2))
    assert first == second
    assert first is not second


def test_the_text_stays_as_it_was_sent():
    assert fitted(both_axles_on(" 225/45R17  94 w"), {})[0].tyre.size == " 225/45R17  94 w"
