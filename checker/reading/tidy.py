"""One spelling for marks that look alike, so that the patterns need to know only one."""

import re

_TYPICAL = r"\(?\b(?:typ(?:ical)?|nom(?:inal)?)\b\.?\)?"

_SUPERSCRIPTS = str.maketrans("⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "+-0123456789")
_MARKS = str.maketrans(
    {
        **dict.fromkeys("″“”„‟ʺ", '"'),
        **dict.fromkeys("′‘’‛`´ʹʼ", "'"),
        **dict.fromkeys("‐‑‒–—−", "-"),
        **dict.fromkeys("⁄∕", "/"),
        **dict.fromkeys("\u200b\u200c\u200d\u2060\ufeff\u00ad", ""),  # marks nobody can see
        "×": "x", "·": "*", "º": "°", "≥": ">=", "≤": "<=", "±": "+/-", "∶": ":",
        "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3",
        "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
    }
)  # fmt: skip


def tidy(kind: str, text: str) -> str:
    """Put a text in lower case with plain marks: one minus, one inch mark, `1e-5` for 1 x 10⁻⁵."""
    text = re.sub(r"[⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+", lambda found: "^" + found[0].translate(_SUPERSCRIPTS), text)
    text = " ".join(text.translate(_MARKS).lower().replace("''", '"').replace(", ", " ").split())
    if "10^" in text:
        text = re.sub(r"(?<=[0-9])\s*[x*]\s*10\^\s*(?=[+-]?[0-9])", "e", text)
        text = re.sub(r"(?<![0-9.])10\^\s*(?=[+-]?[0-9])", "1e", text)
    text = re.sub(r"(?<=[0-9])-(?=[a-z])", " ", text)  # a 4-inch pipe, a 10-mil sheet
    if kind == "level":
        text = re.sub(r"^el(?:ev(?:ation)?)?\b\.?\s*", "", text)
    return re.sub(rf"^{_TYPICAL}\s*|\s*{_TYPICAL}$", "", text)
