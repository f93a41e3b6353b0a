"""Numbers as people write them, and the error of everything that is not a quantity."""

from fractions import Fraction

_LARGEST_EXPONENT = 30

NUMBER = r"(?:(?:[0-9]+[ -])?[0-9]+/[0-9]+|(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:e[+-]?[0-9]{1,9})?)"
SIGNED = rf"(?P<sign>[+-]?)\s*(?P<number>{NUMBER})"
# A unit may begin with a figure only in 1/s; anything else would be a second number.
UNIT = r"(?P<unit>1\s*/\s*[a-z].*|(?![0-9.,+-]).*)"


class NotationError(ValueError):
    """A text that is no quantity of the kind wanted; the message says what would be."""


def number(text: str) -> Fraction:
    """Read an unsigned number exactly: `4`, `4.5`, `1e-5`, `3/8`, `2 1/2` or `2-1/2`."""
    if "/" in text:
        whole, _, part = text.replace("-", " ").rpartition(" ")
        top, bottom = (int(digits) for digits in part.split("/"))
        if bottom == 0:
            raise NotationError(f"{part} is not a number: nothing can be split into 0 parts")
        if whole and top >= bottom:
            raise NotationError(f"{text} is not a mixed number: {part} is not less than 1")
        return int(whole or 0) + Fraction(top, bottom)
    exponent = text.partition("e")[2]
    if exponent and abs(int(exponent)) > _LARGEST_EXPONENT:
        raise NotationError(f"{text} is beyond anything that is built or measured")
    return Fraction(text)
