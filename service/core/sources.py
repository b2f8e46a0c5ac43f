"""The documents that numbers in the service come from, each with how far it was really read.

The project's reference notes were read, not always the documents themselves. `status` repeats what the notes
say of each: `read` (a copy or an official reproduction was read), `second_hand` (somebody's quotation was read),
`memory` (known from the trade, no text found), `derived` (computed from numbers that were read), `own` (this
project's judgement). `checked` is the day of those notes, `not read` where no text was found. A paragraph has
a key of its own where its status differs from that of its document.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import NamedTuple

from service.core.findings import Basis, BasisKind, BasisStatus


class Source(NamedTuple):
    """A document: its key here, title, edition, day checked (ISO date or `not read`), status and kind."""

    key: str
    title: str
    edition: str
    checked: str
    status: BasisStatus
    kind: BasisKind


NOTES = "2026-11-24"
UNREAD = "not read"
UNPUBLISHED = ("common_practice", "project_estimate")

# key: (title, edition, day checked, status, kind); a new entry goes to the end of its group.
_ENTRIES: dict[str, tuple[str, str, str, BasisStatus, BasisKind]] = {
    # United Nations and European Union
    "UN-R30 2.31": (
        "UN Regulation No. 30, para. 2.31, load at speed",
        "as printed in Automotive Engineering, ch. 10.1",
        NOTES,
        "read",
        "regulation",
    ),
    "UN-R30 6.1.1.1": (
        "UN Regulation No. 30, para. 6.1.1.1, section width",
        "amendment text, reproduced",
        NOTES,
        "read",
        "regulation",
    ),
    "UN-R30 6.1.2.1": ("UN Regulation No. 30, para. 6.1.2.1, outer diameter", "", UNREAD, "memory", "regulation"),
    "UN-R30 6.1.4.2": ("UN Regulation No. 30, para. 6.1.4.2, width tolerance", "", UNREAD, "memory", "regulation"),
    "UN-R30 annex 5": ("UN Regulation No. 30, annex 5, sizes with a table row", "", UNREAD, "memory", "regulation"),
    "UN-R30 load index": (
        "Load-capacity index table",
        "as printed in the Dutch Regeling voertuigen, annex 4 (indices 50 and 59 from memory)",
        NOTES,
        "read",
        "regulation",
    ),
    "UN-R30 speed symbol": (
        "Speed category symbols",
        "read except A1 to E and Q and U (from memory)",
        NOTES,
        "read",
        "regulation",
    ),
    "UN-R39 5.3": ("UN Regulation No. 39, para. 5.3, speedometer", "", NOTES, "second_hand", "regulation"),
    "UN-R39 5.2.5": ("UN Regulation No. 39, para. 5.2.5, test speeds", "", UNREAD, "memory", "regulation"),
    "EU-75-443": (
        "Directive 75/443/EEC, speedometer",
        "eq. 10.1.2a of Automotive Engineering, ch. 10.1",
        NOTES,
        "read",
        "regulation",
    ),
    "UN-R54": ("UN Regulation No. 54, commercial tyres", "", UNREAD, "memory", "regulation"),
    "UN-R54 annex 8": (
        "UN Regulation No. 54, annex 8, load at speed",
        "as printed in the Dutch Regeling voertuigen, annex 5",
        NOTES,
        "read",
        "regulation",
    ),
    "UN-R64": ("UN Regulation No. 64, temporary-use spare", "01 to 03 series", UNREAD, "memory", "regulation"),
    "UN-R142": ("UN Regulation No. 142, installation of tyres", "", UNREAD, "memory", "regulation"),
    "EU-MI0081": (
        "EU summary on the installation of tyres (mi0081)",
        "",
        NOTES,
        "read",
        "regulation",
    ),
    "EU-92-23": ("Directive 92/23/EEC, tyres", "consolidated", NOTES, "read", "regulation"),
    "EU-1222-2009 annex I": (
        "Regulation (EC) 1222/2009, annex I, classes of the tyre label",
        "",
        NOTES,
        "read",
        "regulation",
    ),
    "EU-2020-740": ("Regulation (EU) 2020/740, tyre label, letters A to E", "", UNREAD, "memory", "regulation"),
    "EU-2009-28 annex III": (
        "Directive 2009/28/EC, annex III, energy content of fuels",
        "",
        UNREAD,
        "memory",
        "regulation",
    ),
    # National law and national inspection
    "NL-RV": ("Regeling voertuigen (Netherlands)", "10 May 2017", NOTES, "read", "regulation"),
    "DE-STVZO": ("Strassenverkehrs-Zulassungs-Ordnung (Germany)", "26 March 2022", NOTES, "read", "regulation"),
    "ES-ITV": ("Manual de procedimiento ITV (Spain)", "revision 6, January 2009", NOTES, "second_hand", "regulation"),
    "FI-TRAFICOM": ("Traficom regulation on modification (Finland)", "", NOTES, "second_hand", "regulation"),
    "UK-SI-2001-25": ("SI 2001/25, schedule 3, para. 5 (United Kingdom)", "", NOTES, "read", "regulation"),
    "AU-NSW-VSI9": ("Vehicle Standards Information 9 (NSW)", "10 December 2019", NOTES, "read", "regulation"),
    "AU-NSW-VSI9 rev 4": ("Vehicle Standards Information 9 (NSW)", "revision 4", NOTES, "second_hand", "regulation"),
    "AU-NSW-40A": ("Road Transport (Vehicle Registration) Regulation, 40A (NSW)", "2017", NOTES, "read", "regulation"),
    "AU-WA-46": ("Vehicle standards rules, rule 46 (Western Australia)", "", NOTES, "read", "regulation"),
    "AU-SA-52": ("Vehicle standards rules, rule 52 (South Australia)", "", NOTES, "read", "regulation"),
    "AU-SA": ("Light vehicle guidance (South Australia)", "", NOTES, "second_hand", "regulation"),
    "AU-VSB14": (
        "Vehicle Standards Bulletin 14 (Australia)",
        "version 2.1, November 2015",
        NOTES,
        "second_hand",
        "regulation",
    ),
    "AU-VSB14 cars": ("Vehicle Standards Bulletin 14 (Australia)", "", UNREAD, "memory", "regulation"),
    "AU-ADR-18-03": ("Australian Design Rule 18/03, speedometer", "", NOTES, "second_hand", "regulation"),
    "NZ-VIRM": ("Vehicle Inspection Requirements Manual (New Zealand)", "", NOTES, "read", "regulation"),
    "JP-148": (
        "Japan, notification art. 148 and 226, built to 31 December 2006",
        "",
        NOTES,
        "second_hand",
        "regulation",
    ),
    "JP-148 from 2007": (
        "Japan, notification art. 148 and 226, built from 1 January 2007",
        "",
        UNREAD,
        "memory",
        "regulation",
    ),
    "US-FMVSS-110": ("FMVSS 110 S4.2.1, as NHTSA letter nht90-3.98 states it", "", NOTES, "read", "regulation"),
    "US-FMVSS-120": (
        "FMVSS 120 S5.1.2, as NHTSA letters nht76-1.47 and nht80-3.25 state it",
        "",
        NOTES,
        "read",
        "regulation",
    ),
    "US-49CFR393.82": ("49 CFR 393.82, speedometer of buses and trucks", "70 FR 48054", NOTES, "read", "regulation"),
    # Standards and design guides
    "ISO-4000-2": ("ISO 4000-2, passenger car rims, clause 4", "2021 and 2007 editions", NOTES, "read", "standard"),
    "ISO-4000-2 table 4": ("ISO 4000-2, table 4, specified rim diameter", "", UNREAD, "memory", "standard"),
    "ETRTO": ("ETRTO Standards Manual and design guide", "", UNREAD, "memory", "standard"),
    "ETRTO pressure-load": (
        "ETRTO load by pressure",
        "as printed in Automotive Engineering, p. 290 (attribution derived)",
        NOTES,
        "read",
        "standard",
    ),
    "WDK-107": ("WDK guideline 107, rolling circumference and its tolerance", "", UNREAD, "memory", "standard"),
    "GUM": (
        "Guide to the expression of uncertainty in measurement (JCGM 100)",
        "2008",
        UNREAD,
        "memory",
        "standard",
    ),
    "ISO-128-2": ("ISO 128-2, lines of technical drawings", "", UNREAD, "memory", "standard"),
    "ISO-5455": ("ISO 5455, scales of technical drawings", "", UNREAD, "memory", "standard"),
    "TRA": ("Tire and Rim Association design guide", "", NOTES, "second_hand", "standard"),
    # Books, papers and published models
    "HANDBOOK": ("Automotive Engineering (Butterworth-Heinemann), ch. 10.1", "", NOTES, "read", "published_model"),
    "RHYNE-2005": (
        "Rhyne, vertical stiffness of belted radial tires",
        "Tire Sci. Technol. 33(3)",
        UNREAD,
        "memory",
        "published_model",
    ),
    "MF-TYRE": ("MF-Tyre 6.2, tread width relation", "6.2", NOTES, "read", "published_model"),
    "SIMILARITY": ("Cornering stiffness by similarity, open simulator", "", NOTES, "read", "published_model"),
    "GILLESPIE": ("Gillespie, Fundamentals of Vehicle Dynamics, ch. 6", "", NOTES, "read", "published_model"),
    "GALLAWAY-1979": ("Gallaway et al., FHWA-RD-79-31", "1979", NOTES, "second_hand", "published_model"),
    "HORNE-DREHER-1963": ("Horne and Dreher, NASA TN D-2056", "1963", NOTES, "second_hand", "published_model"),
    "HORNE-DREHER-1963 lift": (
        "Horne and Dreher, NASA TN D-2056, lift with the square of speed",
        "1963",
        UNREAD,
        "memory",
        "published_model",
    ),
    "LOAD-SENSITIVITY": ("Tyre-model texts, friction falls with load", "", NOTES, "read", "published_model"),
    "NIST-HANDBOOK": (
        "NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.2, sample sizes",
        "",
        UNREAD,
        "memory",
        "published_model",
    ),
    "GUENTHER-1981": (
        "Guenther, sample size formulas for normal theory t tests",
        "American Statistician 35(4)",
        UNREAD,
        "memory",
        "published_model",
    ),
    "CO2MPAS": ("European Commission, CO2MPAS model, defaults", "15 November 2023", NOTES, "read", "published_model"),
    "FOOTPRINTS-2021": (
        "Measured footprints of 255/40R17 tyres",
        "25 September 2021",
        NOTES,
        "read",
        "published_model",
    ),
    # What rests on nobody's paper
    "COMMON-PRACTICE": ("Common practice of the trade (no published source)", "", UNREAD, "memory", "common_practice"),
    "TRADE-LT": ("Trade texts and a printed load table of light-truck tyres", "", NOTES, "read", "common_practice"),
    "PROJECT": ("This project's own estimate", "", UNREAD, "own", "project_estimate"),
}

SOURCES: Mapping[str, Source] = MappingProxyType({key: Source(key, *rest) for key, rest in _ENTRIES.items()})


@cache
def basis(key: str, reference: str | None = None) -> Basis:
    """Return what a finding rests on, in words, for a key of `SOURCES`.

    `reference` adds the place in the document (an article, a page); callers keep the result as a constant.
    A regulation or standard known only from memory is called common practice: nobody has seen it say so.
    """
    source = SOURCES[key]
    from_memory = source.status == "memory" and source.kind in ("regulation", "standard")
    words = ", ".join(part for part in (source.title, source.edition) if part)
    if reference is not None:
        # What no paper says has no place in one: the reference then says what is meant.
        words += f"{': ' if source.kind in UNPUBLISHED else ', '}{reference}"
    if source.kind in UNPUBLISHED:
        return Basis(source.kind, key, reference or "", source.status, words)
    seen = "text not read" if source.checked == UNREAD else f"checked {source.checked}"
    kind: BasisKind = "common_practice" if from_memory else source.kind
    return Basis(kind, key, reference or "", source.status, f"{words}; {seen}")
