"""The rule book asked of a spec: every rule once, or once for every item of its list."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from checker.deriving.engine import Deriver
from checker.judging.cautions import cautions_for
from checker.judging.conditions import Answer, Combined, Judged
from checker.judging.day import day_of
from checker.judging.findings import Room
from checker.judging.questions import gather_questions
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SEEN,
    NOT_SHOWN,
    STAGES,
    Review,
    rank,
)
from checker.judging.rulebook import Case, Rule, Rulebook
from checker.judging.ruling import OUTSIDE, Ruling
from checker.judging.stages import Progress, buried_by, placed
from checker.judging.standards import ON_EACH_LOT, belongs_to_a_lot
from checker.judging.standing import Citing
from checker.reading.spec import NOT_APPLICABLE, Spec
from checker.reading.vocabulary import vocabulary

SAID_ABSENT = f'the spec says "{NOT_APPLICABLE}"'
PLANNED = "no objection to the plan; it must be seen, and who saw it written down, by stage {}"
FOR_PERSON = "no objection from these rules; a competent person or the engineer decides"


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
    rulings = [ruling for rule in asked for ruling in _rulings(rule, deriver, progress)]
    if spec.paper == "standard":
        rulings = [_on_each_lot(ruling) for ruling in rulings]
    by_name = {(ruling.rule.id, ruling.item): ruling for ruling in rulings}
    room = Room(by_name, deriver, Citing(deriver, rulebook.law))
    rulings.sort(key=_in_order)
    findings = [room.finding(ruling) for ruling in rulings]
    return Review(
        file=spec.file, assembly=spec.name, paper=spec.paper, basis=spec.basis,
        stage=progress.stage, stage_assumed=not (by or stated), by=by, rulebook="belowgrade",
        digest=rulebook.digest, cautions=cautions_for(progress.stage, findings),
        buried=buried_by(progress.stage) if by or stated else (), findings=tuple(findings),
        questions=gather_questions(rulings),
        notes=spec.notes + moved + rulebook.notes, day=day or day_of(spec), books=rulebook.books,
    )  # fmt: skip


def _in_order(ruling: Ruling) -> tuple[tuple[int, bool, int], str, str]:
    rule = ruling.rule
    return rank(ruling.severity, rule.protects, rule.how_often), rule.id, ruling.item


# -- one rule --------------------------------------------------------------------------------------


def _on_each_lot(ruling: Ruling) -> Ruling:
    """Ask of a standard only what a standard can show."""
    if ruling.outcome != NOT_SHOWN or not ruling.missing:
        return ruling
    asked = tuple(path for path in ruling.missing if not belongs_to_a_lot(path))
    if asked and ruling.because != NOT_SEEN:
        return replace(ruling, missing=asked)
    return replace(ruling, outcome=DOES_NOT_APPLY, because=ON_EACH_LOT, missing=())


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
        if rule.concerns(deriver, "", False) is False:
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
    applies = rule.concerns(deriver, item, False)
    if applies is False:
        return _outside(rule, deriver, item)
    cases, unsure = _candidates(rule, deriver, item)
    if applies and len(cases) == 1 and not rule.seen:
        holds = cases[0].holds(deriver, item, True)
        if holds or (holds is False and not rule.unless):
            # What was compared is asked for when somebody reads it.
            answer = partial(cases[0].require.answer, deriver, item, asking=True)
            outcome = MET if holds else NOT_MET
            return _as_good(Ruling(rule, item, outcome, "", cases[0], None, answer=answer))
    return _weigh(rule, deriver, item, progress, applies, cases, unsure)


def _outside(rule: Rule, deriver: Deriver, item: str) -> Ruling:
    scope = rule.applies
    if scope is None:
        raise ValueError(f"{rule.id} applies everywhere")
    if deriver.says_absent and not _may_be_waved_off(rule, None):
        answer = scope.answer(deriver, item, asking=False)
        said = tuple(one for one in answer.judged if one.left.because == SAID_ABSENT)
        if said:
            missing = tuple(path for one in said for path in one.missing)
            return Ruling(rule, item, NOT_SHOWN, SAID_ABSENT, None, said, missing, scope_open=True)
    later = partial(scope.answer, deriver, item, asking=False)
    return Ruling(rule, item, DOES_NOT_APPLY, OUTSIDE, None, None, answer=later)


def _candidates(
    rule: Rule, deriver: Deriver, item: str
) -> tuple[Sequence[Case], tuple[Judged, ...]]:
    """Return the cases that may govern: all not known to be out, up to the first that does."""
    if len(rule.cases) == 1 and rule.cases[0].where is None:
        return rule.cases, ()
    cases: list[Case] = []
    unsure: tuple[Judged, ...] = ()
    for case in rule.cases:
        governs = case.governs(deriver, item, False)
        if governs is False:
            continue
        cases.append(case)
        if governs:
            break
        unsure += _scope(case.where, deriver, item).judged
    return cases, unsure


def _scope(condition: Combined | None, deriver: Deriver, item: str) -> Answer:
    """Say whether something is asked here at all; what has no condition always is."""
    return condition.answer(deriver, item, asking=False) if condition else Answer(True, ())


def _weigh(
    rule: Rule,
    deriver: Deriver,
    item: str,
    progress: Progress,
    applies: bool | None,
    cases: Sequence[Case],
    unsure: tuple[Judged, ...],
) -> Ruling:
    """Rule where it takes a closer look: something fails, is not known, or must be seen."""
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
    if applies is None and not agreed:
        # Whether it applies at all is the first thing to ask.
        scope = _scope(rule.applies, deriver, item)
        waiting = _open(rule, item, excepted or case, scope.judged, ())
        return replace(waiting, scope_open=True)
    if agreed is None:
        return _open(rule, item, excepted or case, judged, unsure)
    if not agreed:
        return Ruling(rule, item, NOT_MET, "", excepted or case, judged)
    met = Ruling(rule, item, MET, "", excepted or case, judged, by_exception=excepted is not None)
    return _if_seen(rule, item, met, deriver, progress)


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


def _if_seen(rule: Rule, item: str, met: Ruling, deriver: Deriver, progress: Progress) -> Ruling:
    """Let what must be seen by somebody with a name count only when it was."""
    unseen = _unseen(met.judged, deriver) if rule.seen else ()
    if not unseen:
        return _as_good(met)
    seen_by = rule.due or rule.stage
    if progress.reached(seen_by):
        return Ruling(rule, item, NOT_SHOWN, NOT_SEEN, met.case, met.judged, unseen)
    because = PLANNED.format(seen_by.replace("_", " "))
    return Ruling(rule, item, DOES_NOT_APPLY, because, met.case, met.judged)


def _as_good(ruling: Ruling) -> Ruling:
    """Say of what is met no more than a rule may: some only a person can decide."""
    if ruling.outcome == MET and ruling.rule.at_best:
        return replace(ruling, outcome=DOES_NOT_APPLY, because=FOR_PERSON, by_exception=False)
    return ruling


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
