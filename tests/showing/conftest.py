"""Reviews built by hand, so that what is shown is held to what was judged and to nothing else."""

from __future__ import annotations

import pytest

from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SHOWN,
    At,
    Caution,
    Cited,
    Compared,
    Elsewhere,
    Finding,
    Question,
    Review,
)

ONTARIO = Cited(
    "o-reg-332-12", "9.14.3.3(1)", "Ontario Building Code 2012",
    "The top of the drain lies below the underside of the floor slab",
    "own text", "law elsewhere",
)  # fmt: skip
IRC_SLOPE = Cited(
    "irc-2018", "R401.3", "International Residential Code 2018",
    "Ground falls 6 in within the first 10 ft from the wall.", "quoted elsewhere", "law here",
)  # fmt: skip

BLANK = Finding(
    rule="drain.above-slab", title="Drain too high to protect the floor", severity="critical",
    how_often="known", stage="drain", trade="drain", protects="building", item="", outcome=MET,
    because="", compared=(), places=(), missing=(), assumed=(), tight=False, by_exception=False,
    standing="common practice", sources=(), elsewhere=(),
    rationale="Water stands against the floor joint before a pipe this high takes any of it.",
    differs="", remedy="", stop=False, ask="", safety="",
)  # fmt: skip

TOO_HIGH = BLANK._replace(
    outcome=NOT_MET,
    compared=(
        Compared("drain.crown_high", "crown of the pipe at its highest corner", NOT_MET,
                 "91.92 ft", "below underside of slab 91.67 ft", "3 in", "", True,
                 -0.0762, "level", "in"),
    ),
    places=(
        At("drain.corners.NE.invert", "invert", "91.58", 41, 20, "SUB-03 p2", "on paper"),
        At("levels.slab_underside", "underside of slab", "91.67", 12, 3, "", ""),
    ),
    assumed=("outside diameter of the pipe: 4.215 in, from the table of pipes",),
    elsewhere=(Elsewhere(MET, "at most top of footing 91.67 ft", (ONTARIO,)),),
    differs="Some counties accept a pipe that rests on the footing.",
    remedy="There is no room to lower it (0.2 in left above bearing). Do not dig lower. Ask the "
    "engineer; before the pour, thicken the footing.",
    stop=True,
)  # fmt: skip
EAST = BLANK._replace(
    rule="grade.slope", title="Ground falls too little away from the wall", severity="major",
    how_often="common", stage="final_grade", trade="grading", item="east", outcome=NOT_MET,
    compared=(
        Compared("grade.sides.east.slope", "slope of the ground", NOT_MET, "3.5 %", "at least 5 %",
                 "1.5 %", "", True),
    ),
    places=(At("grade.sides.east.fall", "fall", "2.5 in", 77, 30, "", "measured"),),
    standing="law here", sources=(IRC_SLOPE,), remedy="Raise the ground at the wall by 1.1 in.",
    safety="Mark buried lines before regrading.",
)  # fmt: skip
RARE = BLANK._replace(
    rule="coat.absent", title="No coat on a wall that holds back earth", how_often="rare",
    stage="coating", trade="coating", outcome=NOT_MET,
    compared=(Compared("coat.class", "class of the coat", NOT_MET, "none",
                       "one of dampproofing, waterproofing", "", "", False),),
    places=(At("coat.class", "class", "none", 55, 10, "", ""),),
    remedy="Name the coat, its class and its product sheet.",
)  # fmt: skip

GOOD = tuple(
    BLANK._replace(rule=rule, severity="minor")
    for rule in (
        "backfill.cap", "backfill.zone-width", "coat.over-joint", "coat.thickness", "coat.coverage",
        "drain.absent", "drain.on-footing", "drain.flat", "drain.diameter", "drain.gap",
        "drain.cleanout", "fabrics.missing", "footing.subgrade", "joint.cove", "levels.datum",
        "outlets.gravity",
    )
)  # fmt: skip
TIGHT = BLANK._replace(
    rule="drain.below-bearing",
    compared=(
        Compared("drain.trench_bottom_low", "bottom of the trench at its lowest", MET, "90.68 ft",
                 "at least underside of footing 90.67 ft", "", "1/8 in", True),
    ),
    tight=True,
)  # fmt: skip
SIDES = tuple(BLANK._replace(rule="grade.slope", item=side) for side in ("north", "west"))
EXCEPTED = BLANK._replace(rule="grade.short-run", item="south", by_exception=True)

OPEN = tuple(
    BLANK._replace(rule=rule, title=title, severity=severity, outcome=NOT_SHOWN, missing=missing)
    for rule, title, severity, missing in (
        ("site.high-water-missing", "High water unknown", "major", ("levels.seasonal_high_water",)),
        ("levels.floor-near-water", "Floor near water", "major", ("levels.seasonal_high_water",)),
        ("coat.compatibility", "Coat and board unproven", "major", ("coat.compatible_with",)),
        ("fabrics.opening", "Fabric too open", "minor", ("fabrics.wrap.aos",)),
        ("outlets.guard", "Outlet without a guard", "minor", ("outlets.main.guard",)),
    )
)
RANGED = BLANK._replace(
    rule="drain.ponding", title="Water stands in the pipe", severity="minor", outcome=NOT_SHOWN,
    because="it is met at one end of the range and not at the other",
)  # fmt: skip
FOR_PERSON = BLANK._replace(
    rule="excavation.protection", title="Hole has no protection against cave-in",
    outcome=DOES_NOT_APPLY, trade="excavation", protects="people",
    because="no objection from these rules; a competent person or the engineer decides",
    compared=(Compared("excavation.protection", "protection", MET, "slope", "is not none", "", "",
                       False),),
)  # fmt: skip
SAID = BLANK._replace(
    rule="footing.winter-cover", outcome=DOES_NOT_APPLY, because='the spec says "not applicable"'
)
LATER = BLANK._replace(
    rule="record.photos", outcome=DOES_NOT_APPLY, because="not due until pre backfill"
)
OUTSIDE = BLANK._replace(
    rule="coat.block-parge", outcome=DOES_NOT_APPLY, because="outside its scope"
)

QUESTIONS = (
    Question("levels.seasonal_high_water", "seasonal high water", "How high does the water stand?",
             "major", "desk", ("site.high-water-missing", "levels.floor-near-water"),
             'the spec says "by others"'),
    Question("coat.compatible_with", "what the coat may touch", "May the board touch the coat?",
             "major", "coating", ("coat.compatibility",), ""),
    Question("fabrics.wrap.aos", "apparent opening size (wrap)", "", "minor", "drain",
             ("fabrics.opening",), ""),
    Question("outlets.main.guard", "guard (main)", "", "minor", "drain", ("outlets.guard",), ""),
    Question("(drain.ponding)", "Water stands in the pipe", "", "minor", "drain",
             ("drain.ponding",), RANGED.because),
)  # fmt: skip

CAUTIONS = (
    Caution("DANGER", "Nobody goes in until a competent person has looked today."),
    Caution("WARNING", "Have buried utilities located and marked before anything is dug."),
    Caution("NOTICE", "The local code, the competent person and the licensed engineer decide."),
)


@pytest.fixture
def blank() -> Finding:
    """A finding that is met and rests on nothing, to be changed with `_replace`."""
    return BLANK


@pytest.fixture
def review() -> Review:
    """Three failures, four questions and one open for another reason, twenty met."""
    return Review(
        file="specs/quillwater.yaml", assembly="Quillwater Lane, lot 14", paper="submittal",
        stage="desk", stage_assumed=True, by="", rulebook="belowgrade", digest="0123456789ab",
        cautions=CAUTIONS,
        findings=(EAST, RARE, TOO_HIGH, *OPEN, RANGED, *GOOD, TIGHT, *SIDES, EXCEPTED, FOR_PERSON,
                  SAID, LATER, OUTSIDE),
        questions=QUESTIONS, notes=("line 9: 'cut sheet' was read as product data",),
    )  # fmt: skip


@pytest.fixture
def empty() -> Review:
    """A review of a spec that shows nothing."""
    return Review(
        file="-", assembly="assembly 1", paper="", stage="desk", stage_assumed=True, by="",
        rulebook="belowgrade", digest="0123456789ab", cautions=(), findings=OPEN, questions=(),
        notes=(),
    )  # fmt: skip
