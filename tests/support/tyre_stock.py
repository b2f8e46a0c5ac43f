"""What lies on the shelves of an ordinary shop: tyre designations from 13 to 22 inch, and rims.

Load index and speed symbol of a size are pairs as makers print them, from memory (common practice, no source); what an
index carries is in the load index table. The rims carry what is stamped on their back, and of a few the load rating or
the bore was not noted, as in the lists that wholesalers send.
"""

from __future__ import annotations

import re
from typing import Any

Json = dict[str, Any]

# A size, then its service descriptions: winter tyres bear the mountain symbol alone, all-season tyres M+S as well;
# RF is run-flat.
_CARS = """
155 R13: 78S
155/80 R13: 79T
165/70 R13: 79T; 79T 3PMSF
175/70 R13: 82T; 82T 3PMSF; 82T M+S 3PMSF
155/65 R14: 75T; 75T 3PMSF
165/65 R14: 79T; 79T 3PMSF; 79T M+S 3PMSF
165/70 R14: 81T; 81T 3PMSF
175/65 R14: 82T; 82H; 82T 3PMSF; 86T XL M+S 3PMSF
185/60 R14: 82H; 82T 3PMSF
185/65 R14: 86H
175/60 R15: 81H
165/60 R15: 77H
175/65 R15: 84H; 84T 3PMSF
185/55 R15: 82V; 82T 3PMSF
185/60 R15: 84H; 88H XL; 88T XL 3PMSF
185/65 R15: 88H; 88T; 88T 3PMSF; 88H M+S 3PMSF
195/50 R15: 82V
195/55 R15: 85V; 85H 3PMSF
195/60 R15: 88H
195/65 R15: 91H; 91V; 95H XL; 91T 3PMSF; 91H 3PMSF; 91H M+S 3PMSF; 95V XL M+S 3PMSF
205/60 R15: 91V
205/65 R15: 94V
195/45 R16: 84V XL
195/50 R16: 84V; 88V XL
195/55 R16: 87V; 87H 3PMSF; 87H M+S 3PMSF
205/45 R16: 87W XL
205/50 R16: 87W
205/55 R16: 91V; 91W; 94V XL; 91T 3PMSF; 91H 3PMSF; 94V XL 3PMSF; 91V M+S 3PMSF
205/55 RF16: 91V; 91W
205/60 R16: 92H; 92V; 96V XL; 92H 3PMSF; 96H XL M+S 3PMSF
215/55 R16: 93V; 97W XL; 97H XL 3PMSF
215/60 R16: 95V; 99H XL 3PMSF; 99V XL M+S 3PMSF
215/65 R16: 98H; 98H 3PMSF; 98V
225/55 R16: 95W; 99H XL 3PMSF
205/40 R17: 84W XL
205/45 R17: 88W XL; 88V XL 3PMSF
205/50 R17: 93W XL; 93V XL 3PMSF; 93W XL M+S 3PMSF
205/50 RF17: 89V
205/55 R17: 95V XL; 95V XL 3PMSF
215/40 R17: 87W XL
215/45 R17: 91W XL; 91V XL 3PMSF
215/50 R17: 95W XL; 95V XL 3PMSF
215/55 R17: 94V; 98W XL; 98V XL 3PMSF; 98W XL M+S 3PMSF
215/60 R17: 96H; 96H 3PMSF; 100V XL M+S 3PMSF
215/65 R17: 99V; 103V XL 3PMSF
225/45 R17: 91W; 94W XL; 94Y XL; 91H 3PMSF; 94V XL 3PMSF; 94W XL M+S 3PMSF
225/45 RF17: 91W
225/50 R17: 94W; 98W XL; 98Y XL; 98V XL 3PMSF; 98H XL 3PMSF; 98W XL M+S 3PMSF
225/50 RF17: 94W
225/55 R17: 97W; 101W XL; 101V XL 3PMSF
225/55 RF17: 97Y
225/60 R17: 99H; 99V; 103V XL 3PMSF
225/65 R17: 102H; 102H 3PMSF; 106V XL M+S 3PMSF
235/45 R17: 94W; 97Y XL; 97V XL 3PMSF
235/55 R17: 99V; 103W XL
235/65 R17: 104V; 108V XL 3PMSF
245/40 R17: 91W
245/45 R17: 95W; 99Y XL
215/45 R18: 93W XL; 93V XL 3PMSF
215/55 R18: 99V XL; 95H
225/40 R18: 92Y XL; 92V XL 3PMSF; 92W XL M+S 3PMSF
225/40 RF18: 92W XL
225/45 R18: 95Y XL; 95V XL 3PMSF
225/45 RF18: 91W
225/55 R18: 98V; 102V XL 3PMSF
225/60 R18: 100H; 104V XL M+S 3PMSF
235/40 R18: 95Y XL; 95V XL 3PMSF
235/45 R18: 94W; 98Y XL; 98V XL 3PMSF
235/50 R18: 97V; 101Y XL; 101V XL 3PMSF
235/55 R18: 100V; 104V XL; 104H XL 3PMSF
235/60 R18: 103V; 107V XL; 107W XL; 103H 3PMSF; 107H XL 3PMSF; 107V XL M+S 3PMSF
245/40 R18: 97Y XL; 97V XL 3PMSF; 97W XL M+S 3PMSF
245/40 RF18: 93W
245/45 R18: 100Y XL; 100V XL 3PMSF
245/45 RF18: 96W
255/35 R18: 94Y XL
255/40 R18: 99Y XL
255/55 R18: 109V XL; 109H XL 3PMSF
255/60 R18: 112V XL
225/35 R19: 88Y XL
225/40 R19: 93Y XL; 93V XL 3PMSF; 93W XL M+S 3PMSF
225/40 RF19: 93W XL
225/45 R19: 96W XL; 96V XL 3PMSF
225/55 R19: 99V; 103V XL 3PMSF
235/35 R19: 91Y XL; 91V XL 3PMSF
235/40 R19: 96Y XL
235/45 R19: 99V XL
235/50 R19: 99V; 103V XL 3PMSF
235/55 R19: 101V; 105W XL; 105V XL 3PMSF; 105V XL M+S 3PMSF
245/35 R19: 93Y XL
245/40 R19: 98Y XL; 98V XL 3PMSF
245/45 R19: 102Y XL
245/45 RF19: 98W
255/35 R19: 96Y XL; 96V XL 3PMSF; 96W XL M+S 3PMSF
255/35 RF19: 96W XL
255/40 R19: 100Y XL; 100V XL 3PMSF
255/50 R19: 107W XL; 107V XL 3PMSF
285/30 R19: 98Y XL
245/35 R20: 95Y XL
245/45 R20: 103W XL; 103V XL 3PMSF
255/35 R20: 97Y XL
255/40 R20: 101Y XL; 101V XL 3PMSF
255/45 R20: 105W XL; 105V XL 3PMSF; 105V XL M+S 3PMSF
265/45 R20: 108Y XL
275/40 R20: 106W XL; 106V XL 3PMSF
285/45 R20: 112W XL
HL235/55 R19: 109V
HL245/45 R20: 106W
HL255/45 R20: 108W; 108V 3PMSF
HL255/40 R21: 105Y
HL275/35 R22: 107Y
255/40 R21: 102Y XL; 102V XL 3PMSF
265/40 R21: 105Y XL
285/40 R21: 109Y XL
275/35 R22: 104Y XL
285/35 R22: 106Y XL
"""
_WORKING = """
165/70 R14C: 89/87R
175/65 R14C: 90/88T
185 R14C: 102/100Q; 102/100P
195/70 R15C: 104/102R; 104/102R 3PMSF
205/65 R15C: 102/100T
205/70 R15C: 106/104R
215/70 R15C: 109/107S
225/70 R15C: 112/110R; 112/110R 3PMSF
185/75 R16C: 104/102R
195/65 R16C: 104/102T; 104/102T 3PMSF
195/75 R16C: 107/105R; 110/108R; 107/105R 3PMSF; 107/105R M+S 3PMSF
205/65 R16C: 107/105T
205/75 R16C: 110/108R; 113/111R; 110/108R 3PMSF
215/60 R16C: 103/101T
215/65 R16C: 109/107T; 109/107R 3PMSF
215/75 R16C: 116/114R
225/65 R16C: 112/110R; 112/110T 3PMSF
225/75 R16C: 121/120R; 118/116R
235/65 R16C: 115/113R; 121/119R; 115/113R M+S 3PMSF
215/60 R17C: 109/107T
225/75 R16CP: 118R; 116Q
215/70 R15CP: 109R
225/70 R15CP: 112R; 112R M+S 3PMSF
215/75 R16CP: 116R
LT225/75 R16: 115/112S E
LT235/85 R16: 120/116R E
LT245/75 R16: 120/116S E; 120/116Q E 3PMSF
LT265/70 R16: 121/118R E
LT265/75 R16: 123/120R E
LT265/70 R17: 121/118S E; 121/118Q E 3PMSF
LT285/70 R17: 121/118R E
"""


def _designations(table: str) -> tuple[str, ...]:
    found = []
    for line in table.strip().splitlines():
        size, _, services = line.partition(": ")
        found += [f"{size} {service}" for service in services.split("; ")]
    return tuple(found)


CARS = _designations(_CARS)
WORKING = _designations(_WORKING)
STOCK = CARS + WORKING
WINTER = tuple(each for each in STOCK if "3PMSF" in each)
SUMMER = tuple(each for each in STOCK if "3PMSF" not in each)


def rim_code(tyre: str) -> str:
    """Return the rim code of a designation of the stock."""
    found = re.search(r" RF?(\d+)", tyre)
    assert found is not None
    return found.group(1)


def of_codes(*codes: str) -> tuple[str, ...]:
    """Return the tyres of the stock for rims of these codes."""
    return tuple(each for each in STOCK if rim_code(each) in codes)


def _rim(size: str, bolt_circle: str, centre_bore_mm: float | None, load_rating_kg: float | None) -> Json:
    noted = {"centre_bore_mm": centre_bore_mm, "load_rating_kg": load_rating_kg}
    return {"size": size, "bolt_circle": bolt_circle} | {
        name: value for name, value in noted.items() if value is not None
    }


RIMS: tuple[Json, ...] = (
    _rim("4.5J x 13 H2 ET38", "4x100", 57.1, 450),
    _rim("5J x 13 H2 ET35", "4x100", 57.1, None),
    _rim("5J x 14 H2 ET35", "4x100", 54.1, 480),
    _rim("5.5J x 14 H2 ET38", "4x100", 60.1, 500),
    _rim("5.5J x 15 H2 ET40", "4x100", 54.1, 520),
    _rim("6J x 15 H2 ET43", "5x108", 63.4, 600),
    _rim("6.5J x 16 H2 ET46", "5x108", 63.4, 630),
    _rim("7J x 17 H2 ET45", "5x108", 70.1, None),
    _rim("6J x 15 H2 ET45", "5x112", 57.1, 620),
    _rim("6.5J x 16 H2 ET46", "5x112", 57.1, 650),
    _rim("7J x 17 H2 ET48", "5x112", 66.6, 690),
    _rim("7.5J x 17 H2 ET47", "5x112", 66.6, 720),
    _rim("8J x 18 H2 ET45", "5x112", None, 720),
    _rim("7.5J x 18 H2 ET45", "5x112", 66.6, 750),
    _rim("8J x 19 H2 ET30", "5x112", 66.6, 725),
    _rim("8.5J x 19 H2 ET35", "5x112", 66.6, None),
    _rim("9J x 19 H2 ET38", "5x112", 66.6, 740),
    _rim("8J x 19 H2 ET40", "5x114.3", 67.1, 800),
    _rim("8.5J x 20 H2 ET40", "5x114.3", 67.1, 850),
    _rim("9J x 21 H2 ET38", "5x114.3", 72.6, 875),
    _rim("5.5J x 14 H2 ET30", "5x112", 66.6, 900),
    _rim("6J x 16 H2 ET68", "5x130", 78.1, 1350),
    _rim("5.5J x 16 H2 ET110", "6x205", 161, 1050),
    _rim("7J x 16 H2 ET30", "6x139.7", 106.1, 1400),
    _rim("7.5J x 17 H2 ET30", "6x139.7", 106.1, 1400),
)
