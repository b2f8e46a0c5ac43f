"""A fitment, the answer to it as a caller receives it, and both of its drawings."""

from __future__ import annotations

import re
from xml.etree.ElementTree import fromstring

from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from tests.support.cases import answer, check
from tests.unit.drawing.fitments import REQUESTS
from tests.unit.drawing.sheet import Sheet

# Half the last digit that the answer prints, with the drawing's own thousandths [mm].
TENTH, WHOLE, HUNDREDTH = 0.06, 0.51, 0.006
AXLES = ("front", "rear")
SIDES = ("inboard", "outboard", "radial")
OVERLAPS = {"inboard": "the strut", "outboard": "the wing edge", "radial": "the arch"}


class Case:
    """A fitment, its answer and both of its drawings."""

    def __init__(self, name):
        self.request = REQUESTS[name]
        self.found = found = check(self.request)
        self.answer = answer(found)
        self.section = fromstring(draw_section(found))
        self.patches = fromstring(draw_patches(found))
        self.sheet = Sheet(self.section)
        self.ids = {each.get("id") for each in self.section.iter()}

    def twin(self, axle):
        return self.request["vehicle"][axle].get("wheels_per_side", 1) == 2

    def numbers(self, axle, which="proposed"):
        return self.answer["axles"][axle][which]

    def finding(self, code, axle):
        (found,) = (each for each in self.answer["findings"] if (each["code"], each["axle"]) == (code, axle))
        return found

    def panel(self, axle):
        """Return the words in the half of the sheet that shows an axle."""
        middle = 0.5 * self.sheet.width
        return [each for each in self.sheet.words if (each.box.left < middle) == (axle == "front")]

    def offset(self, axle, which):
        fitted = self.request["vehicle"][axle]["fitted"] if which == "present" else self.request["candidate"][axle]
        return float(re.search(r"ET(-?\d+)", fitted["rim"]["size"])[1]) - fitted.get("spacer_mm", 0)

    def rim_width(self, axle, which):
        fitted = self.request["vehicle"][axle]["fitted"] if which == "present" else self.request["candidate"][axle]
        return float(re.match(r"[\d.]+", fitted["rim"]["size"])[0]) * 25.4
