"""One invented lot: what it is, its names, and its levels and lengths, which agree with one another.

Everything is worked out in feet; a lot in metres has its levels written in metres. A careless writer
gets some of them wrong.
"""

from __future__ import annotations

import datetime
from random import Random
from typing import NamedTuple

STREETS = (
    "Alder Rise", "Ashgrove Court", "Barley Mow Lane", "Beacon Fields", "Bittern Walk",
    "Blackthorn Close", "Brackenridge", "Burnt Oak Drive", "Candlewick Row", "Cinder Hill",
    "Clover Bank", "Copperbeech Way", "Dovecote Lane", "Drummond Flats", "Eddystone Place",
    "Fallow End", "Fernhollow", "Gorse Common", "Greywether Street", "Hawthorn Bend",
    "Hollow Ash Road", "Ironbark Terrace", "Juniper Fold", "Kestrel Heights", "Lapwing Mead",
    "Lodestone Drive", "Marl Pit Lane", "Millrace Bend", "Nettlebed", "Orchard Steps",
    "Paddock Rise", "Quarry Bank", "Rookery Lane", "Saltmarsh View", "Sorrel Green",
    "Tamarack Trace", "Thistledown", "Underhill Way", "Withy Bed Lane", "Yarrow Court",
)  # fmt: skip
TOWNS = ("Town of Marrowfield", "Village of Upper Sedge", "Fenwick Borough", "City of Ostrey")
BUILDERS = ("Harrow and Fenn Homes", "Ostrander Homes", "Larkin Row Builders", "Pike Hollow Homes")
PEOPLE = ("D. Osterlund", "R. Halloway", "M. Quist", "A. Brannigan", "T. Okafor-Lund")
DRAIN_SUBS = ("Tallgrass Drain Co.", "Culvert and Sons", "Wet Foot Drainage")
COAT_SUBS = ("Bracken Coatings", "Blackwall Coatings", "Tarn Brothers")
ENGINEERS = ("Lindqvist and Moss Engineers", "Abbot Kerr Structural")
PLUMBERS = ("Millrace Plumbing", "Lower Tamsin Plumbing")
SOILS = (("CL", 72), ("CL", 80), ("ML", 60), ("SC", 32), ("SM", 24), ("CH", 88), ("GC", 18))
DATUMS = ("nail in east kerb", "top of hydrant spindle", "manhole rim", "iron pin at the corner")
FIRST_DAY = datetime.date(2031, 3, 3)


class Lot(NamedTuple):
    """What the parts of a spec are chosen by, and what is filled into them by name."""

    tags: frozenset[str]
    names: dict[str, str]
    careless: float


def invent(number: int, rng: Random) -> Lot:
    """Return the lot of this number; every hundredth is the standard of its folder."""
    kind = "standard" if number % 100 == 0 else _often(rng, basement=86, crawl=9, hill=4)
    stage = "early" if kind == "hill" else _often(rng, early=75, late=25)
    units = "us" if kind == "standard" else _often(rng, us=83, metric=17)
    water = _often(rng, daylight=70, sump=30) if kind == "basement" else "daylight"
    careless = rng.choice((0.0, 0.04, 0.08, 0.12, 0.2, 0.35))
    levels = _levels(rng, careless, 2.8 if kind == "crawl" else rng.uniform(6.4, 8.6))
    names = {
        **_names(number, rng),
        **_lengths(rng),
        **_written(levels, units, rng),
    }
    if kind == "standard":
        return Lot(frozenset(("any", kind, units)), names, careless=0)
    paper = _often(rng, plain=96, own=4) if (kind, stage) == ("basement", "early") else "plain"
    paper = stage if stage == "late" else kind if kind == "hill" else paper
    return Lot(frozenset(("any", "lot", kind, stage, units, water, paper)), names, careless)


def _often(rng: Random, **weights: int) -> str:
    return rng.choices(list(weights), list(weights.values()))[0]


def _names(number: int, rng: Random) -> dict[str, str]:
    """Return who and when. Street and lot together are never given twice."""
    day = FIRST_DAY + datetime.timedelta(rng.randrange(300))
    soil, fines = rng.choice(SOILS)
    return {
        "street": STREETS[number % len(STREETS)],
        "lot": str(number // len(STREETS) + 1),
        "town": rng.choice(TOWNS),
        "builder": rng.choice(BUILDERS),
        "super": rng.choice(PEOPLE),
        "drain_sub": rng.choice(DRAIN_SUBS),
        "coat_sub": rng.choice(COAT_SUBS),
        "engineer": rng.choice(ENGINEERS),
        "plumber": rng.choice(PLUMBERS),
        "standard": f"HF-FDN-{number // 100:02} rev {rng.choice('ABC')}",
        "day": str(day),
        "earlier": str(day - datetime.timedelta(rng.randrange(9, 60))),
        "usc": soil,
        "fines": str(fines + rng.randint(-4, 4)),
        **{f"n{place}": f"{n:02}" for place, n in enumerate(rng.sample(range(1, 90), 5), 1)},
    }


def _lengths(rng: Random) -> dict[str, str]:
    """Return the lengths that follow from the size of the house, in the units of the parts."""
    long, short = rng.randrange(32, 61, 2), rng.randrange(22, 37, 2)
    height = rng.choice((8, 9))
    area = 2 * (long + short) * height
    return {
        "long": str(long),
        "short": str(short),
        "size": f"{long} ft x {short} ft",
        "half": str(long + short + 4),
        "perimeter": str(2 * (long + short)),
        "coat_area": str(area),
        # 1604 wet mil from a gallon on a square foot; a coat is laid 65 wet mil thick, or less.
        "coat_gallons": str(round(area * rng.choice((70, 66, 66, 40)) / 1604)),
        "stone_yards": str(round((long + short) * 2 * 2.4 / 27, 1)),
        "roof": str(round(long * short * 1.35 / 10) * 10),
    }


def _levels(rng: Random, careless: float, fill: float) -> dict[str, float]:
    """Return the levels in feet, and the lengths in inches and feet that go with them."""

    def either(right: float, wrong: float) -> float:
        return wrong if rng.random() < careless else right

    grade = rng.choice((100.0, 100.0, rng.uniform(84, 99), rng.uniform(210, 870)))
    slab = grade - fill
    top = slab - rng.choice((0, 0, 0.33))
    thick = either(rng.choice((10, 12, 12)), 8)
    bottom = top - thick / 12
    outlet_corner = bottom + 2.12 / 12 + rng.uniform(0.01, 0.05) + either(0, 0.6)
    fall = rng.uniform(0.18, 0.34)
    crown = outlet_corner + fall + (4.215 - 0.12) / 12
    cover = either(rng.choice((6, 8, 12)), 2)
    leg = rng.randrange(20, 120, 5)
    inlet = outlet_corner - either(0.06, -0.2)
    return {
        "grade": grade,
        "top_of_wall": grade + 0.67,
        "floor": slab + 0.33,
        "slab_underside": slab,
        "footing_top": top,
        "footing_underside": bottom,
        "water": bottom - either(rng.uniform(0.6, 4), -0.4),
        "service": slab + rng.uniform(1.5, 3),
        "sleeve": bottom + 0.28,
        "invert_ne": outlet_corner + fall,
        "invert_nw": outlet_corner + fall * rng.uniform(0.3, 0.5),
        "invert_sw": outlet_corner,
        "invert_se": outlet_corner + either(fall * rng.uniform(0.5, 0.7), -0.08),
        "crown": crown,
        "stone_top": crown + cover / 12,
        "zone_top": grade - 0.5,
        "coat_top": grade - either(0, 1),
        "coat_bottom": either(bottom, top + 0.33),
        "sheet_top": grade + 0.05,
        "sheet_bottom": either(top - 0.4, top + 1.1),
        "outlet_invert": outlet_corner - leg / 96 - either(rng.uniform(0.2, 1.2), -0.3),
        "sump_inlet": inlet,
        "pump_on": inlet - either(0.2, -0.1),
        "inside_high": inlet + 0.2,
        "open_grade": slab - 0.8,
        "open_footing_top": slab - 3.7,
        "open_footing_underside": slab - 4.7,
        # Not levels, and so never in metres.
        "in footing_thickness": thick,
        "in cover": cover,
        "ft leg": leg,
        "ft dig": fill + thick / 12 + 0.5,
    }


def _written(levels: dict[str, float], units: str, rng: Random) -> dict[str, str]:
    in_metres = units == "metric"
    written = {
        "unit": "m" if in_metres else "ft",
        "datum": f"{rng.choice(DATUMS)} = {'30.480' if in_metres else '100.00'}",
    }
    for name, value in levels.items():
        unit, _, bare = name.rpartition(" ")
        if unit:
            written[bare] = f"{value:.3g}"
        else:
            written[bare] = f"{value * 0.3048:.3f}" if in_metres else f"{value:.2f}"
    return written
