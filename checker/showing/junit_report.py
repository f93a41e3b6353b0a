"""Reviews as JUnit XML, which build servers show as tests: a suite for each assembly.

What is not met and what is not shown are failures, because both count; what does not apply is
skipped; a file that could not be read is an error.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from checker.judging.review_data import DOES_NOT_APPLY, NOT_MET, NOT_SHOWN, Finding, Review
from checker.reading.faults import Fault
from checker.showing.finding_text import named
from checker.showing.lines import clean, joined
from checker.showing.text import closing

# What XML cannot hold, however it is escaped.
_FORBIDDEN = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def as_junit(reviews: Iterable[Review], faults: Sequence[Fault] = ()) -> str:
    """Return reviews, and what could not be read, as XML in plain ASCII without any time in it."""
    return "".join(in_one(map(suite, reviews), lambda: faults))


def suite(review: Review) -> str:
    """Return one review as a suite."""
    suite = Element("testsuite", name=_text(f"{review.assembly} ({review.basis})"))
    for finding in review.findings:
        case = SubElement(suite, "testcase", _about(finding, review))
        if finding.outcome == DOES_NOT_APPLY:
            SubElement(case, "skipped", message=_text(finding.because or finding.outcome))
        elif finding.open:
            kind = f"{finding.severity}, {finding.outcome}"
            failure = SubElement(case, "failure", type=kind, message=_text(_message(finding)))
            asked = finding.ask if finding.outcome == NOT_SHOWN else ""
            failure.text = _text(joined([finding.remedy, asked, finding.safety], " "))
    SubElement(suite, "system-out").text = _text(
        joined([*(f"{one.signal}: {one.text}" for one in review.cautions), closing([review])], " ")
    )
    return _written(suite)


def in_one(suites: Iterable[str], faults: Callable[[], Sequence[Fault]]) -> Iterator[str]:
    """Yield the text of `as_junit` piece by piece; `faults` is asked after the last suite."""
    yield "<?xml version='1.0' encoding='us-ascii'?>\n<testsuites name=\"belowgrade\">"
    yield from suites
    of_files: dict[str, list[Fault]] = {}
    for fault in faults():
        of_files.setdefault(fault.file, []).append(fault)
    for file, found in of_files.items():
        yield _unreadable(file, found)
    yield "\n</testsuites>\n"


def _unreadable(file: str, faults: Sequence[Fault]) -> str:
    suite = Element("testsuite", name=_text(file))
    case = SubElement(suite, "testcase", name="can be read", classname=_text(file))
    for fault in faults:
        SubElement(case, "error", type="unreadable", message=_text(str(fault)))
    return _written(suite)


def _written(suite: Element) -> str:
    """Return a suite as it stands inside the whole, on lines of its own."""
    _count(suite)
    indent(suite, level=1)
    text: bytes = tostring(suite, encoding="us-ascii", xml_declaration=False)
    return "\n  " + text.decode()


def _about(finding: Finding, review: Review) -> dict[str, str]:
    """Return what a case is called, and the line of the first value of this file it rests on."""
    name = _text(named(finding.title, finding.item))
    about = {"name": name, "classname": finding.rule, "file": _text(review.file)}
    lines = [one.line for one in finding.places if one.line and one.file in ("", review.file)]
    return about | ({"line": str(lines[0])} if lines else {})


def _message(finding: Finding) -> str:
    if finding.outcome == NOT_SHOWN:
        missing = f"not shown: {', '.join(finding.missing)}" if finding.missing else ""
        return joined([finding.because, missing]) or finding.outcome
    return joined(
        [
            joined([f"shown {one.shown} ({one.title})", f"needed {one.needed}"], ", ")
            + (f", off by {one.off_by}" if one.off_by else "")
            for one in finding.compared
            if one.outcome == NOT_MET
        ]
    )


def _count(suite: Element) -> None:
    suite.set("tests", str(len(suite.findall("testcase"))))
    for name, tag in (("failures", "failure"), ("errors", "error"), ("skipped", "skipped")):
        suite.set(name, str(len(suite.findall(f"testcase/{tag}"))))


def _text(text: str) -> str:
    return _FORBIDDEN.sub("", clean(text))
