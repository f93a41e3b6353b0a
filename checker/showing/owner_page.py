"""The owner's page in Markdown: what to keep up in the house that was built, part by part.

Only parts that the spec shows are spoken of; what was measured stands in place of what was drawn.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from checker.judging.review_data import NOT_MET, Review
from checker.judging.standing import register
from checker.reading.spec import Spec
from checker.showing.finding_text import READ, named
from checker.showing.lines import joined
from checker.showing.markdown import page, text
from checker.showing.text import by_weight, closing

# What the advice below rests on, where it rests on something that was read.
_SOURCES = (("epa-402-f-13053", "p. 98"), ("iowa-pm-1561", "bulletin"))
_BY_GRAVITY = {
    "daylight": "ends in the open",
    "storm": "runs into the storm drain",
    "dry_well": "runs into a dry well",
}

# The sections of a spec that an owner keeps up.
_LOOKED_AFTER = frozenset({"grade", "roof", "outlets", "drain", "sump", "wells", "areaways"})

# A part of the house: its heading, and what it says of a spec; nothing when the spec shows nothing.
Part = tuple[str, Callable[[Spec], list[str]]]


def owner_page(pairs: Sequence[tuple[Spec, Review]]) -> str:
    """Return the page of each assembly, one after the other; the reviews are those at handover."""
    lines: list[str] = []
    for spec, review in pairs:
        lines += ["", "---", ""] if lines else []
        lines += _page(spec, review)
    return page(lines)


def _page(spec: Spec, review: Review) -> list[str]:
    parts = [(title, advice(spec)) for title, advice in PARTS]
    return [
        f"# Keeping the basement dry: {text(spec.name)}",
        "",
        "Water is led away from this house by parts that nobody sees. They last as long as what"
        " can be seen is kept up.",
        "",
        *(f"**{one.signal}** {text(one.text)}\n" for one in review.cautions),
        *_section("Ask the builder first", _short_of(review)),
        *(line for title, told in parts if told for line in _section(title, told)),
        *_section("Keep with this page", _papers(spec)),
        *_not_told(spec),
        "---",
        "",
        _foot(spec, review),
    ]


def _short_of(review: Review) -> list[str]:
    """What an owner will look after and what the review found wanting: never told as in order."""
    return [
        f"{text(named(one.title, one.item))}: the review found this wanting before the house was"
        " handed over. Ask what was done about it."
        for one in by_weight(review.of(NOT_MET))
        if one.severity != "minor" and one.rule.partition(".")[0] in _LOOKED_AFTER
    ]


def _section(title: str, told: Sequence[str]) -> list[str]:
    return [f"## {title}", "", *(f"- {one}" for one in told), ""] if told else []


# -- parts -----------------------------------------------------------------------------------------


def _ground(spec: Spec) -> list[str]:
    sides = spec.lists.get("grade.sides", ())
    if not sides:
        return []
    told = ["Look after each winter, and above all after the first year: fill settles for years."]
    told.append("Fill up what has settled with tight soil, so that water runs away from the wall.")
    for side in sides:
        fall, run = (_of(spec, f"grade.sides.{side}.{key}") for key in ("fall", "in_distance"))
        if fall and run:
            told.append(f"{text(side)} side: it was to fall {fall} within {run} of the wall.")
    plan = _of(spec, "backfill.settlement_plan")
    told += [f"What was agreed on settling: {plan}."] if plan else []
    if _shown(spec, "sheet.top_level") or _shown(spec, "coat.top_level"):
        told.append(
            "Never raise soil, mulch or paving above the top of the sheet or coat on the wall."
        )
    return told


def _roof(spec: Spec) -> list[str]:
    told = []
    if _is(spec, "roof.gutters", True):
        told.append("Clean the gutters every spring and every autumn, and after any storm.")
    for one in spec.lists.get("roof.leaders", ()):
        path = f"roof.leaders.{one}"
        out, end = _of(spec, f"{path}.discharge_distance"), _word(spec, f"{path}.outlet")
        if out or end:
            where = joined([f"{out} from the wall" if out else "", end], ", ")
            told.append(f"Leader {text(one)} ends {where}. Take no piece off it.")
    if told:
        told.append("Never lead roof water into the footing drain or the sump.")
    return told


def _outlets(spec: Spec) -> list[str]:
    told = []
    for one in spec.lists.get("outlets", ()):
        path = f"outlets.{one}"
        kind = _raw(spec, f"{path}.kind")
        if kind not in _BY_GRAVITY:
            continue
        far = _of(spec, f"{path}.distance_house")
        away = f", {far} from the house" if far else ""
        guard = _word(spec, f"{path}.guard")
        told.append(f"The footing drain {_BY_GRAVITY[str(kind)]} (outlet {text(one)}{away}).")
        told += [f"It has: {guard}. Put back what is lost."] if guard else []
        if kind == "daylight":
            told += [
                "Keep it clear of soil, leaves, grass and snow. Nothing is planted, built or"
                " parked on it.",
                "Look at it after heavy rain. If it was always wet and now stays dry, or water"
                " stands in it, have the drain flushed.",
            ]
    return told


def _drain(spec: Spec) -> list[str]:
    places, count = _word(spec, "drain.cleanouts_at"), _of(spec, "drain.cleanouts")
    if not places and not count:
        return []
    at = f" at {places}" if places else ""
    number = f"{count} cleanouts" if count else "cleanouts"
    return [
        f"The footing drain has {number}{at}. Keep the caps on, and keep them where they can be"
        " found. They let a plumber flush the pipe.",
        *(["Iron slime was seen in this ground: have the drain flushed every year."]
          if _is(spec, "site.iron", True) else []),
    ]  # fmt: skip


def _sump(spec: Spec) -> list[str]:
    if not _is(spec, "sump.present", True):
        return []
    told = [
        "Every three months pour a bucket of water into the pit: the pump must start, empty it"
        " and stop. Look before the wet season, too.",
        "Keep the pit free of silt and stones, and its cover on: a child can drown in it.",
    ]
    goes, far = _word(spec, "sump.discharge_to"), _of(spec, "sump.discharge_distance")
    if goes or far:
        where = joined([f"{far} from the wall" if far else "", goes], ", ")
        told.append(f"The pump's water ends {where}. Keep that end clear, also of ice.")
    backup = _word(spec, "sump.backup")
    if backup:
        told.append(f"When the power fails there is: {backup}. Try it twice a year.")
    elif _raw(spec, "sump.backup") == ():
        told.append("When the power fails nothing pumps. Ask for a second pump with its own power.")
    if _is(spec, "sump.alarm", True):
        told.append("The alarm says that water is high: lift its float once a year and listen.")
    if _is(spec, "sump.check_valve", True):
        told.append(
            "A valve keeps the water from running back: if the pump starts again at once, have it"
            " looked at."
        )
    told.append("A pump lasts some years, not for ever. Note here when it was put in: ____________")
    return told


def _wells(spec: Spec) -> list[str]:
    wells, stairs = spec.lists.get("wells", ()), spec.lists.get("areaways", ())
    told = []
    if wells:
        told.append(
            f"Window wells ({text(', '.join(wells))}): take out leaves, never fill them up with"
            " soil or mulch, and keep the rim above the ground."
        )
    if any(_is(spec, f"wells.{one}.escape", True) for one in wells):
        told.append("A well that is a way out stays free: no lock, nothing stored on its cover.")
    if stairs:
        told.append("Outside stairs: clear the drain at their foot before every wet season.")
    return told


def _inside(spec: Spec) -> list[str]:
    if not (_shown(spec, "slab.thickness") or _shown(spec, "wall.type")):
        return []
    return [
        "After a storm walk once round inside. A new damp spot, white bloom, a crack that grows or"
        " a wall that leans is something to have looked at, not painted over.",
        "If the basement ever floods: cut the power from a dry place first. Do not pump it out in"
        " one go: the water outside can break the walls and lift the floor. Ask an engineer how"
        " fast.",
    ]


PARTS: tuple[Part, ...] = (
    ("The ground round the house", _ground),
    ("Gutters and leaders", _roof),
    ("The drain's outlet", _outlets),
    ("The drain", _drain),
    ("The sump and its pump", _sump),
    ("Window wells and outside stairs", _wells),
    ("Inside", _inside),
)


def _papers(spec: Spec) -> list[str]:
    told = []
    for one in spec.lists.get("documents", ()):
        covers = _word(spec, f"documents.{one}.covers")
        kind = _word(spec, f"documents.{one}.type")
        told.append(joined([f"{text(one)} ({kind})" if kind else text(one), covers], ": "))
    photos = spec.lists.get("record.photos", ())
    told += [f"{len(photos)} photographs of what is covered now"] if photos else []
    levels = _of(spec, "record.levels_by")
    told += [f"The levels that were measured, by {levels}"] if levels else []
    return told


def _not_told(spec: Spec) -> list[str]:
    """Name what an owner must know and the spec does not show."""
    asked = []
    if not spec.lists.get("outlets") and not _is(spec, "sump.present", True):
        asked.append("Where does the water of the footing drain go?")
    if spec.lists.get("roof.leaders") is None:
        asked.append("Where does each leader end?")
    if not spec.lists.get("record.photos"):
        asked.append("Which photographs and levels show what is covered now?")
    return _section("Ask the builder", asked)


def _foot(spec: Spec, review: Review) -> str:
    read = []
    for key in _SOURCES:
        source = register().get(key)
        if source is not None:
            how = f" ({READ[source.seen]})" if source.seen in READ else ""
            read.append(f"{text(source.name)}, {text(source.at)}{how}")
    basis = "what was measured" if review.basis == "measured" else "what was drawn"
    return (
        f"Made from {text(spec.file)} by {basis}. The advice is common practice; looking at the"
        f" outside, sump and settled soil, and refilling after a year, also stand in"
        f" {' and '.join(read)}. Rules of {review.rulebook}, digest {review.digest[:12]}:"
        f" {closing([review])} No warranty, and no substitute for somebody who looks at the house."
    )


# -- values ----------------------------------------------------------------------------------------


def _of(spec: Spec, path: str) -> str:
    return text(spec.text(path)) if _shown(spec, path) else ""


def _shown(spec: Spec, path: str) -> bool:
    return _raw(spec, path) is not None


def _raw(spec: Spec, path: str) -> object:
    shown = spec.values.get(path)
    return shown.value if shown is not None and not shown.word else None


def _is(spec: Spec, path: str, wanted: bool) -> bool:
    return _raw(spec, path) is wanted


def _word(spec: Spec, path: str) -> str:
    value = _raw(spec, path)
    words = value if isinstance(value, tuple) else (value,) if value is not None else ()
    return text(", ".join(str(one).replace("_", " ") for one in words))
