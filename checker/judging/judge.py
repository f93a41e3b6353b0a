"""The rule book asked of a spec: every rule once, or once for every item of its list."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from checker.deriving.engine import Deriver
from checker.judging.cautions import cautions_for
from checker.judging.conditions import Answer, Combined, Judged
from checker.judging.day import day_of
from checker.judging.questions import gather_questions
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SEEN,
    NOT_SHOWN,
    STAGES,
    At,
    Cited,
    Compared,
    Elsewhere,
    Finding,
    Review,
    weight,
)
from checker.judging.rulebook import Case, Rule, Rulebook
from checker.judging.stages import Progress, buried_by, placed
from checker.judging.standards import ON_EACH_LOT, belongs_to_a_lot
from checker.judging.standing import HOUSE_STANDARD, Citing, strongest
from checker.judging.wording import InWords, fill, put
from checker.reading.spec import NOT_APPLICABLE, Spec
from checker.reading.vocabulary import vocabulary

OUTSIDE = "outside its scope"
SAID_ABSENT = f'the spec says "{NOT_APPLICABLE}"'
PLANNED = "no objection to the plan; it must be seen, and who saw it written down, by stage {}"
FOR_PERSON = "no objection from these rules; a competent person or the engineer decides"


class Ruling(NamedTuple):
    """What a rule came to for one item, before it is put into words."""

    rule: Rule
    item: str
    outcome: str
    because: str
    case: Case | None
    judged: tuple[Judged, ...]
    missing: tuple[str, ...] = ()
    by_exception: bool = False
    scope_open: bool = False


def review(spec: Spec, rulebook: Rulebook, by: str = "", day: str = "") -> Review:
    """Judge a spec by a rule book; `by` asks only what must be right by that stage.

    `day` is the day judged (2031-07-02), where it is not to be read from the spec. The review is
    plain data and the same every time for the same input.
    """
    deriver = Deriver(spec)
    stated = deriver.get("job.stage").value
    done = frozenset(deriver.get("job.done").value or ())
    progress = Progress(by or stated or STAGES[0], done, stated or STAGES[0])
    rules, moved = placed(rulebook.rules, deriver)
    asked = [rule for rule in rules if not by or progress.reached(rule.stage)]
    rulings = [ruling for rule in asked for ruling in _rule(rule, deriver, progress)]
    room = {(ruling.rule.id, ruling.item): ruling for ruling in rulings}
    citing = Citing(deriver, rulebook.law)
    findings = sorted(
        (_finding(ruling, deriver, room, citing) for ruling in rulings),
        key=lambda f: (*weight(f), f.rule, f.item),
    )
    return Review(
        file=spec.file, assembly=spec.name, paper=spec.paper, basis=spec.basis,
        stage=progress.stage, stage_assumed=not (by or stated), by=by, rulebook="belowgrade",
        digest=rulebook.digest, cautions=cautions_for(progress.stage, findings),
        buried=buried_by(progress.stage) if by or stated else (), findings=tuple(findings),
        questions=gather_questions(findings, deriver),
        notes=spec.notes + moved + rulebook.notes, day=day or day_of(spec), books=rulebook.books,
    )  # fmt: skip


# -- one rule --------------------------------------------------------------------------------------


def _rule(rule: Rule, deriver: Deriver, progress: Progress) -> list[Ruling]:
    rulings = _rulings(rule, deriver, progress)
    if deriver.spec.paper == "standard":
        return [_on_each_lot(ruling) for ruling in rulings]
    return rulings


def _on_each_lot(ruling: Ruling) -> Ruling:
    """Ask of a standard only what a standard can show."""
    if ruling.outcome != NOT_SHOWN or not ruling.missing:
        return ruling
    asked = tuple(path for path in ruling.missing if not belongs_to_a_lot(path))
    if asked and ruling.because != NOT_SEEN:
        return ruling._replace(missing=asked)
    return ruling._replace(outcome=DOES_NOT_APPLY, because=ON_EACH_LOT, missing=())


def _rulings(rule: Rule, deriver: Deriver, progress: Progress) -> list[Ruling]:
    if rule.due and not progress.reached(rule.due):
        early = _bad_already(rule, deriver, progress)
        return early or [_apart(rule, f"not due until {rule.due.replace('_', ' ')}")]
    if rule.until and progress.over(rule.until):
        return [_apart(rule, f"not asked once stage {rule.until.replace('_', ' ')} is over")]
    return _of_each(rule, deriver, progress)


def _bad_already(rule: Rule, deriver: Deriver, progress: Progress) -> list[Ruling]:
    """Return what is wrong before it is due, where people can be hurt by it."""
    if rule.protects != "people":
        return []
    return [one for one in _of_each(rule, deriver, progress) if one.outcome == NOT_MET]


def _of_each(rule: Rule, deriver: Deriver, progress: Progress) -> list[Ruling]:
    if not rule.each:
        return [_ask(rule, deriver, "", progress)]
    ids = deriver.get(rule.each)
    if not ids.known:
        if rule.applies and rule.applies.answer(deriver, "", asking=False).outcome is False:
            return [_apart(rule, OUTSIDE)]
        if ids.inapplicable and _may_be_waved_off(rule, None):
            return [_apart(rule, ids.because)]
        cases, _ = _candidates(rule, deriver, "")
        return [
            Ruling(rule, "", NOT_SHOWN, ids.because, cases[0] if cases else None, (), ids.missing)
        ]
    if not ids.value:
        return [_apart(rule, f"none listed in {rule.each}")]
    return [_ask(rule, deriver, item, progress) for item in ids.value]


def _apart(rule: Rule, because: str) -> Ruling:
    return Ruling(rule, "", DOES_NOT_APPLY, because, None, ())


def _ask(rule: Rule, deriver: Deriver, item: str, progress: Progress) -> Ruling:
    applies = _scope(rule.applies, deriver, item)
    if applies.outcome is False:
        said = tuple(one for one in applies.judged if one.left.because == SAID_ABSENT)
        if said and not _may_be_waved_off(rule, None):
            missing = tuple(path for one in said for path in one.missing)
            return Ruling(rule, item, NOT_SHOWN, SAID_ABSENT, None, said, missing, scope_open=True)
        return Ruling(rule, item, DOES_NOT_APPLY, OUTSIDE, None, applies.judged)
    cases, unsure = _candidates(rule, deriver, item)
    answers = tuple((case, _with_exceptions(case, rule, deriver, item)) for case in cases)
    if not answers:
        because = "no case of this rule holds the text adopted here"
        return Ruling(rule, item, NOT_SHOWN, because, None, unsure, _missing(unsure))
    outcomes = {answer.outcome for _, (answer, _) in answers}
    case, (answer, excepted) = answers[0]
    agreed = outcomes.pop() if len(outcomes) == 1 else None
    if agreed is not None:
        judged = answer.judged
    else:
        open_ones = tuple(one for _, (a, _) in answers if a.outcome is None for one in a.judged)
        judged = open_ones or unsure
    if applies.outcome is None and not agreed:
        # Whether it applies at all is the first thing to ask.
        waiting = _open(rule, item, excepted or case, applies.judged, ())
        return waiting._replace(scope_open=True)
    if agreed is None:
        return _open(rule, item, excepted or case, judged, unsure)
    return _settle(
        rule, item, agreed, excepted or case, judged, excepted is not None, deriver, progress
    )


def _scope(condition: Combined | None, deriver: Deriver, item: str) -> Answer:
    """Say whether something is asked here at all; what has no condition always is."""
    return condition.answer(deriver, item, asking=False) if condition else Answer(True, ())


def _candidates(rule: Rule, deriver: Deriver, item: str) -> tuple[list[Case], tuple[Judged, ...]]:
    """Return the cases that may govern: all not known to be out, up to the first that does."""
    cases: list[Case] = []
    unsure: tuple[Judged, ...] = ()
    for case in rule.cases:
        where = _scope(case.where, deriver, item)
        if where.outcome is False:
            continue
        cases.append(case)
        if where.outcome:
            break
        unsure += where.judged
    return cases, unsure


def _with_exceptions(
    case: Case, rule: Rule, deriver: Deriver, item: str
) -> tuple[Answer, Case | None]:
    answer = case.require.answer(deriver, item, asking=True)
    if answer.outcome is True:
        return answer, None
    undecided: tuple[Judged, ...] = ()
    for exception in rule.unless:
        where = _scope(exception.where, deriver, item)
        if where.outcome is False:
            continue
        granted = exception.require.answer(deriver, item, asking=False)
        if where.outcome and granted.outcome:
            return granted, exception
        if granted.outcome is not False:
            undecided += granted.judged if granted.outcome is None else where.judged
    if answer.outcome is False and undecided:
        return Answer(None, undecided), None
    return answer, None


def _settle(
    rule: Rule,
    item: str,
    outcome: bool,
    case: Case,
    judged: tuple[Judged, ...],
    excepted: bool,
    deriver: Deriver,
    progress: Progress,
) -> Ruling:
    if not outcome:
        return Ruling(rule, item, NOT_MET, "", case, judged)
    unseen = _unseen(judged, deriver) if rule.seen else ()
    if unseen:
        seen_by = rule.due or rule.stage
        if not progress.reached(seen_by):
            because = PLANNED.format(seen_by.replace("_", " "))
            return Ruling(rule, item, DOES_NOT_APPLY, because, case, judged)
        return Ruling(rule, item, NOT_SHOWN, NOT_SEEN, case, judged, unseen)
    if rule.at_best:
        return Ruling(rule, item, DOES_NOT_APPLY, FOR_PERSON, case, judged)
    return Ruling(rule, item, MET, "", case, judged, (), excepted)


def _open(
    rule: Rule, item: str, case: Case, judged: tuple[Judged, ...], unsure: tuple[Judged, ...]
) -> Ruling:
    waved_off = bool(judged) and all(one.inapplicable for one in judged)
    if waved_off and _may_be_waved_off(rule, case):
        return Ruling(rule, item, DOES_NOT_APPLY, judged[0].because, case, judged)
    missing = _missing(judged) or _missing(unsure)
    because = next((one.because for one in judged if one.because), "")
    if not because and not missing:
        because = next((one.left.because for one in judged if one.left.because), "")
    return Ruling(rule, item, NOT_SHOWN, because, case, judged, missing)


def _may_be_waved_off(rule: Rule, case: Case | None) -> bool:
    """Say whether a spec's "not applicable" ends the matter: never where it is critical."""
    severity = (case.severity if case else "") or rule.severity
    return rule.protects != "people" and severity != "critical"


def _missing(judged: tuple[Judged, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(path for one in judged for path in one.missing))


def _unseen(judged: tuple[Judged, ...], deriver: Deriver) -> tuple[str, ...]:
    """Return the paths that a comparison rests on and that nobody with a name has seen."""
    values = deriver.spec.values
    rested = [path for one in judged for path in one.left.rests_on]
    # A limit that rests on a fact, such as the type of the soil, is worth no more than the fact.
    rested += [path for one in judged for path in _facts_behind(one, deriver)]
    return tuple(dict.fromkeys(p for p in rested if p in values and not values[p].seen))


def _facts_behind(judged: Judged, deriver: Deriver) -> list[str]:
    if judged.right is None:
        return []
    found = []
    for path in judged.right.rests_on:
        shown = deriver.spec.values.get(path)
        leaf = vocabulary().leaf(shown.pattern) if shown else None
        if leaf is not None and leaf.nature == "fact":
            found.append(path)
    return found


# -- into words ------------------------------------------------------------------------------------


def _finding(
    ruling: Ruling,
    deriver: Deriver,
    rulings: dict[tuple[str, str], Ruling],
    citing: Citing,
) -> Finding:
    rule, case = ruling.rule, ruling.case
    compared = InWords(ruling.judged)
    sources = citing(case.sources) if case else ()
    remedy, stop = _remedy(ruling, compared, rulings)
    return Finding(
        rule=rule.id, title=rule.title, severity=(case.severity if case else "") or rule.severity,
        how_often=rule.how_often, stage=rule.stage, trade=rule.trade, protects=rule.protects,
        item=ruling.item, outcome=ruling.outcome, because=ruling.because, compared=compared,
        places=() if ruling.because == OUTSIDE else _places(ruling, deriver),
        missing=ruling.missing, assumed=_assumed(ruling.judged),
        tight=ruling.outcome == MET and any(_tight(one, deriver) for one in ruling.judged),
        by_exception=ruling.by_exception, standing=_standing(case, sources), sources=sources,
        elsewhere=_elsewhere(ruling, deriver, citing), rationale=rule.rationale,
        differs=rule.differs, remedy=remedy, stop=stop, safety=rule.safety,
        ask="" if ruling.scope_open else rule.ask.replace("{item}", ruling.item),
        amended=rule.amended,
    )  # fmt: skip


def _remedy(
    ruling: Ruling, compared: Sequence[Compared], rulings: dict[tuple[str, str], Ruling]
) -> tuple[str, bool]:
    """Return what to do, and whether it is STOP because the remedy would break the guard."""
    rule = ruling.rule
    if ruling.outcome != NOT_MET:
        return "", False
    text = (ruling.case.remedy if ruling.case else "") or rule.remedy
    guard = rulings.get((rule.guard, ruling.item)) or rulings.get((rule.guard, ""))
    if not rule.guard or guard is None or guard.outcome == DOES_NOT_APPLY:
        return fill(text, compared, ruling.item, ""), False
    left = put(guard.judged[0]).room if guard.judged and guard.outcome == MET else ""
    room = next((one for one in guard.judged if one.room is not None), None)
    off = next((one for one in ruling.judged if one.off is not None), None)
    if guard.outcome == MET and room and off:
        if not _alike(room, off):
            note = f"Mind '{guard.rule.title.lower()}': {left} left there."
            return f"{fill(text, compared, ruling.item, left)} {note}", False
        if (room.room or 0.0) >= (off.off or 0.0):
            return fill(text, compared, ruling.item, left), False
    if guard.outcome == NOT_SHOWN:
        waits = (
            f"First have shown what '{guard.rule.title.lower()}' needs. Until then change no level."
        )
        return waits, True
    return fill(rule.stop or text, compared, ruling.item, left or "nothing"), True


def _alike(one: Judged, other: Judged) -> bool:
    """Say whether two comparisons can be set against each other: a slope is no length."""
    lengths = ("length", "level")
    return one.left.kind == other.left.kind or (
        one.left.kind in lengths and other.left.kind in lengths
    )


def _places(ruling: Ruling, deriver: Deriver) -> tuple[At, ...]:
    values = deriver.spec.values
    paths: dict[str, None] = {}
    for one in ruling.judged:
        for derived in (one.left, one.right):
            if derived is not None:
                paths.update(dict.fromkeys(derived.rests_on))
    found = []
    for path in paths:
        shown = values.get(path)
        if shown is not None:
            title = _title(shown.pattern)
            found.append(
                At(
                    path, title, shown.written, shown.line, shown.column, shown.source, shown.how,
                    shown.file,
                )
            )  # fmt: skip
    return tuple(found)


def _assumed(judged: tuple[Judged, ...]) -> tuple[str, ...]:
    notes: dict[str, None] = {}
    for one in judged:
        for side in (one.left, one.right):
            if side is not None and side.assumed:
                notes.update(dict.fromkeys(side.assumed))
    return tuple(notes)


def _title(pattern: str) -> str:
    leaf = vocabulary().nodes.get(pattern)
    return leaf.title if leaf is not None else pattern


def _tight(judged: Judged, deriver: Deriver) -> bool:
    """Say whether a comparison holds by less than its readings can be trusted."""
    if judged.room is None or judged.left.kind not in ("length", "level"):
        return False
    paths = judged.left.rests_on + (judged.right.rests_on if judged.right else ())
    return any(judged.room < _tolerance(path, deriver) for path in paths)


def _tolerance(path: str, deriver: Deriver) -> float:
    shown = deriver.spec.values.get(path)
    leaf = vocabulary().leaf(shown.pattern) if shown else None
    return leaf.tolerance if leaf and leaf.kind in ("length", "level") else 0.0


def _standing(case: Case | None, sources: tuple[Cited, ...]) -> str:
    if case and case.house and not sources:
        return HOUSE_STANDARD
    return strongest(sources)


def _elsewhere(ruling: Ruling, deriver: Deriver, citing: Citing) -> tuple[Elsewhere, ...]:
    """Judge, for information, the cases not adopted here that come out otherwise.

    Where the rule was amended, what is adopted and no longer governs is told too.
    """
    if ruling.outcome not in (MET, NOT_MET) or len(ruling.rule.cases) < 2:
        return ()
    found = []
    for case in ruling.rule.cases:
        if (
            case is ruling.case
            or case.where is None
            or not case.sources
            or not _about_adoption(case)
        ):
            continue
        adopted = case.where.answer(deriver, ruling.item, asking=False).outcome
        if adopted is not False and not (adopted and ruling.rule.amended):
            continue
        answer = case.require.answer(deriver, ruling.item, asking=True)
        outcome = {True: MET, False: NOT_MET, None: NOT_SHOWN}[answer.outcome]
        if outcome != ruling.outcome and answer.judged:
            cited = citing(case.sources)
            found.append(Elsewhere(outcome, put(answer.judged[0]).needed, cited))
    return tuple(found)


def _about_adoption(case: Case) -> bool:
    return case.where is not None and all(
        getattr(part, "value", "").startswith("adopted.") for part in case.where.parts
    )
