"""The sizes that are read, written for normalised text; the reader and the published pattern share them.

Nominal widths of car, van and truck tyres end in 5, those of motorcycles (to 200 mm) and farm machines (above) in 0,
and rim code 25 belongs to cranes and earth movers: common practice, from memory. Bounds are wide enough for every tyre
in use on the road, narrow enough to catch a slip of the pen.
"""

from __future__ import annotations

WIDTH_MM = (60, 500)
RATIO_PERCENT = (15, 100)
FLOTATION_DIAMETER_IN = (24, 54)
FLOTATION_WIDTH_IN = (4, 20)
NUMERIC_WIDTH_IN = (4, 17)

# The highest rim code of flotation sizes by their overall diameter in inches.
FLOTATION_RIM_CODES = ((24, 30, 20), (30, 34, 26), (34, 55, 30))

# Below this ratio, or on such a rim, a width that ends in 0 is neither a motorcycle's nor a farm machine's.
RACING_RATIO_PERCENT = 30
WIDEST_BIKE_MM = 200
LARGE_RIM_CODE = 24

# V in the size is not the V of a service description: it says "above 210 km/h".
LETTERS_INSIDE = "HQSTUVW"
LOAD_RANGES = "ABCDEFGHJLMN"

_RATIO = "(?:1[5-9]|[2-9][0-9]|100)"
_ANY_WIDTH = "(?:[6-9][0-9]|[1-4][0-9][0-9]|500)"
_CAR_WIDTH = "(?:[6-9][1-9]|[1-4][0-9][1-9])"
_ROUND_WIDTH = "(?:[6-9]0|[1-4][0-9]0|500)"
_RACING_RATIO = "(?:1[5-9]|2[0-9])"
_BIKE_WIDTH = "(?:[6-9]0|1[0-9]0|200)"

_LETTERS = rf"ZRF|ZR|RF|R|[DB\-]|[{LETTERS_INSIDE}] *RF?"
_RIM = r"(?:(?:1[0-9]|2[0-46-9])(?:\.[05])?|[89](?:\.[05])?|30(?:\.0)?)"
_TWO_DIGIT_RIM = r"(?:(?:1[0-9]|2[0-46-9])(?:\.[05])?|30(?:\.0)?)"
_LARGE_RIM = r"(?:2[46-9](?:\.[05])?|30(?:\.0)?)"

_ENDING = f"(?: *(?:{_LETTERS}) *{_RIM}| +{_TWO_DIGIT_RIM})"
_LARGE_ENDING = f"(?: *(?:{_LETTERS}) *| +){_LARGE_RIM}"

METRIC_PARTS = f"(?:(HL|LT|P|T) *)?({_ANY_WIDTH})(?: */ *({_RATIO}))?(?: *({_LETTERS}) *({_RIM})| +({_TWO_DIGIT_RIM}))"
METRIC_PREFIXED = f"(?:HL|P) *{_ANY_WIDTH} */ *{_RATIO}{_ENDING}|T *{_ANY_WIDTH} */ *{_RATIO} *(?:{_LETTERS}) *{_RIM}"
METRIC_LT = f"LT *{_ANY_WIDTH} */ *{_RATIO}{_ENDING}"
METRIC = (
    f"(?:{_CAR_WIDTH} */ *{_RATIO}|{_ROUND_WIDTH} */ *{_RACING_RATIO}){_ENDING}"
    f"|{_BIKE_WIDTH} */ *{_RATIO}{_LARGE_ENDING}"
    f"|{_ANY_WIDTH} *(?:{_LETTERS}) *{_RIM}"
)
METRIC_COMMERCIAL = f"{_ANY_WIDTH} */ *{_RATIO}{_ENDING}"
SLASHED_RANGE = f" */ *[{LOAD_RANGES}]"

# Sizes in inches: two decimals on rims with 5 degree seats, whole inches on 15 degree truck rims, one decimal on both.
_INCHES = r"(?:[4-8]\.[0-9]{1,2}|9\.(?:[05]|[0-9]{2})|1[0-6]\.(?:[05]|[0-9]{2}))"
_NUMERIC_LETTERS = rf"R|[DBX\-]|[{LETTERS_INSIDE}] *R|[HSV]"
NUMERIC = (
    rf"{_INCHES} *(?:{_NUMERIC_LETTERS}) *(?:[89]|1[0-9]|2[0-2])(?:\.[05])?"
    rf"|(?:[4-9]|1[0-2])\.[0-9]{{2}} *(?:{_NUMERIC_LETTERS}) *24(?:\.0)?"
    r"|(?:[7-9]|1[0-8]) *[RD\-] *(?:17|19|22|24)\.5"
)
NUMERIC_PARTS = rf"([0-9]{{1,2}}(?:\.[0-9]{{1,2}})?) *({_NUMERIC_LETTERS}) *((?:1[0-9]|2[0-4]|[89])(?:\.[05])?)"

# The overall diameter bounds the rim code; a quad's width has no decimals, a light truck's has two.
_DECIMALS = r"(?:\.[0-9]{1,2})"
_ACROSS_AND_CODE = (
    (f"2[4-9]{_DECIMALS}?", r"(?:(?:[89]|1[0-9])(?:\.[05])?|20(?:\.0)?)"),
    (f"3[0-3]{_DECIMALS}?", r"(?:(?:[89]|1[0-9]|2[0-4])(?:\.[05])?|26(?:\.0)?)"),
    (rf"(?:(?:3[4-9]|4[0-9]|5[0-3]){_DECIMALS}?|54(?:\.00?)?)", _RIM),
)


def _flotation(decimals: str) -> str:
    """Return flotation sizes whose width has decimals, has none or may have them."""
    sizes = (f"{across} *X *(?:[4-9]|1[0-9]){decimals} *(?:{_LETTERS}) *{code}" for across, code in _ACROSS_AND_CODE)
    return f"(?:{'|'.join(sizes)})"


FLOTATION = f"(?:LT *)?{_flotation(f'{_DECIMALS}?')}"
FLOTATION_PARTS = f"(?:(LT) *)?([0-9]{{2}}{_DECIMALS}?) *X *([0-9]{{1,2}}{_DECIMALS}?) *({_LETTERS}) *({_RIM})"

# Everything before the service description. Letters behind a blank are left to the words, where they are read too.
_LIGHT_TRUCK = f"(?:LT| *LT{SLASHED_RANGE})"
SIZE = (
    f"(?:{METRIC_PREFIXED}|(?:{METRIC})(?:CP?)?|{METRIC_COMMERCIAL}CP?|{METRIC_LT}(?:{SLASHED_RANGE})?"
    f"|(?:{NUMERIC})(?:CP?|{_LIGHT_TRUCK})?"
    f"|{_flotation(_DECIMALS)}{_LIGHT_TRUCK}?|{_flotation('')}{_LIGHT_TRUCK}"
    f"|LT *{_flotation(f'{_DECIMALS}?')}(?:{_LIGHT_TRUCK}|{SLASHED_RANGE})?)"
)


def for_the_road(width_mm: float, ratio_percent: float, rim_code: float) -> bool:
    """Return whether a width that ends in 0 can be a car's: racing ratios, or a rim that no motorcycle has."""
    return ratio_percent < RACING_RATIO_PERCENT or (width_mm <= WIDEST_BIKE_MM and rim_code >= LARGE_RIM_CODE)
