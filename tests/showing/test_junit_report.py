"""JUnit XML, read back by a library that others use for it."""

from __future__ import annotations

import dataclasses
from xml.etree import ElementTree

import pytest
from junitparser import Error, Failure, JUnitXml, Skipped, TestCase, TestSuite

from checker.judging.review_data import DOES_NOT_APPLY, NOT_MET, NOT_SHOWN, Review
from checker.reading.faults import Fault
from checker.showing.junit_report import as_junit


def suites(text: str) -> list[TestSuite]:
    return list(JUnitXml.fromstring(text.encode("ascii")))


def cases(text: str) -> list[TestCase]:
    return [case for suite in suites(text) for case in suite]


def test_a_case_for_every_finding(review: Review) -> None:
    (suite,) = suites(as_junit([review]))
    assert suite.name == "Quillwater Lane, lot 14 (design)"
    assert suite.tests == len(list(suite)) == len(review.findings)
    assert suite.failures == len(review.of(NOT_MET)) + len(review.of(NOT_SHOWN)) == 9
    assert suite.skipped == len(review.of(DOES_NOT_APPLY)) == 4
    assert suite.errors == 0


def test_cases_are_the_findings_in_their_order(review: Review) -> None:
    results = {NOT_MET: Failure, NOT_SHOWN: Failure, DOES_NOT_APPLY: Skipped}
    for case, finding in zip(cases(as_junit([review])), review.findings, strict=True):
        assert case.classname == finding.rule
        wanted = results.get(finding.outcome)
        assert [type(one) for one in case.result] == ([wanted] if wanted else [])


def test_what_is_not_met_says_its_numbers_and_its_place(review: Review) -> None:
    (case,) = (
        case
        for case in cases(as_junit([review]))
        if case.classname == "grade.slope" and case.result
    )
    (failure,) = case.result
    assert failure.type == "major, not met"
    assert failure.message == (
        "shown 3.5 % (slope of the ground), needed at least 5 %, off by 1.5 %"
    )
    assert "Raise the ground at the wall by 1.1 in." in failure.text
    assert 'file="specs/quillwater.yaml" line="77"' in as_junit([review])


def test_what_is_not_shown_says_what_would_do(review: Review) -> None:
    (case,) = (case for case in cases(as_junit([review])) if case.classname == "coat.compatibility")
    (failure,) = case.result
    assert (failure.type, failure.message) == (
        "major, not shown",
        "not shown: coat.compatible_with",
    )


def test_a_variance_is_no_failure(review: Review) -> None:
    findings = tuple(one._replace(varied="V-7") for one in review.findings)
    (suite,) = suites(as_junit([dataclasses.replace(review, findings=findings)]))
    assert suite.failures == 0


def test_what_could_not_be_read_is_an_error(review: Review) -> None:
    faults = [Fault("b.yaml", 3, 1, "is not YAML"), Fault("b.yaml", 4, 1, "nor here")]
    _, unreadable = suites(as_junit([review], faults))
    (case,) = unreadable
    assert (unreadable.name, unreadable.errors) == ("b.yaml", 2)
    assert [type(one) for one in case.result] == [Error, Error]
    assert case.result[0].message == "b.yaml:3:1: is not YAML"


def test_the_last_line_is_there(review: Review) -> None:
    assert "This is not a release." in as_junit([review])


@pytest.mark.parametrize(
    "evil", ["]]><x/>", '"<&>', "\x00\x1b[31m\ud800\ufffe\uffff", "&#0;", "<!DOCTYPE a>"]
)
def test_nothing_in_a_spec_becomes_markup(review: Review, evil: str) -> None:
    plain = as_junit([review])
    finding = review.of(NOT_MET)[0]._replace(item=evil, remedy=evil)
    findings = (finding, *review.findings[1:])
    text = as_junit([dataclasses.replace(review, assembly=evil, file=evil, findings=findings)])
    tags = [one.tag for one in ElementTree.fromstring(text).iter()]
    assert sorted(tags) == sorted(one.tag for one in ElementTree.fromstring(plain).iter())
    assert text.isascii()
