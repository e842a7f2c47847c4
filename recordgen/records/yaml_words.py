"""What the YAML reader complains about, in words of our own."""

from __future__ import annotations

import yaml

from recordgen.records.yaml_slips import slips

# Parts of the reader's reasons, the first that fits, and what is told instead.
_SYNTAX = {
    "mapping values are not allowed": (
        "a colon stands here where none can",
        "Put text that holds a colon in quotes, or begin a new line; keys of one level line up",
    ),
    "could not find expected ':'": ("a key stands here without its colon", "Write key: value, a space after the colon"),
    "did not find expected ',' or": ("a bracket or a comma is missing", "Close each { with } and each [ with ]"),
    "did not find expected key": ("the indentation does not fit the lines above", "Line it up with its neighbours"),
    "did not find expected '-' indicator": ("the indentation does not fit the list above", "Line up the dashes"),
    "block sequence entries are not allowed": ("a dash cannot stand here", "Begin a list on the line after its key"),
    "mapping keys are not allowed": ("a question mark cannot stand here", "Put the text in quotes"),
    "found unexpected end of stream": ("a quote or bracket is opened here and never closed", "Close it"),
    "found unexpected document indicator": ("a quote is opened here and not closed before ---", "Close it"),
    "did not find expected node content": (
        "a value is missing, or a bracket or comma too many",
        "Look at the brackets",
    ),
    "expected a single document": ("a second document begins here", "Keep one record a file; take out the line ---"),
    "<document start>": ("something stands here after the end", "Take out what follows, or the bracket too many"),
    "that cannot start any token": ("this sign cannot begin a value", "Put the value in quotes; use no tab"),
    "found a tab": ("a tab stands here", "Indent with spaces, two for each level"),
    "undefined alias": ("a star begins a reference to nothing", "Put text that begins with * in quotes"),
    "undefined tag": ("an exclamation mark begins a tag that is not known", "Put text that begins with ! in quotes"),
    "duplicate anchor": ("this & name stands in the file twice", "Put text that begins with & in quotes"),
    "escape": ("a backslash stands here with a letter that means nothing", "Write single quotes, or two backslashes"),
    "expected alphabetic or numeric": ("& or * stands here without a name", "Put the value in quotes"),
    "directive": ("a line cannot begin with % here", "Put the value in quotes"),
    "incompatible YAML document": (
        "this names a version of YAML that is not read",
        "Take out the line that begins with %",
    ),
    "nesting depth": ("brackets or dashes are nested too deep", "Write it flatter"),
    "comment or line break": ("something stands behind | or > on this line", "Begin the text on the next line"),
    "indentation indicator": ("something stands behind | or > on this line", "Begin the text on the next line"),
    "found unexpected ':'": (
        "a colon stands here where none can",
        "Put a space after the colon of a key, and text that holds a colon in quotes",
    ),
}
_OTHERWISE = ("this line cannot be read as YAML", "Look at this line and the one before; put unusual text in quotes")
_BEGAN_EARLIER = (
    "found unexpected end of stream",
    "found unexpected document indicator",
    "could not find expected ':'",
)
# What is wrong may be a line before that is read as something else than was meant.
_SLIPPED = ("could not find expected ':'", "mapping values are not", "expected", "did not find")


def told(fault: yaml.MarkedYAMLError, text: str) -> list[tuple[int, int, str, str]]:
    """A fault of the YAML itself, or the slips in `text` that explain it: line, column, message and way out of each."""
    reason = f"{fault.problem or ''} {fault.context or ''}"
    marks = [mark for mark in (fault.context_mark, fault.problem_mark) if mark]
    if found := reason.startswith(_SLIPPED) and list(slips(text.splitlines(), [mark.line for mark in marks])):
        return found
    began = fault.context_mark if reason.startswith(_BEGAN_EARLIER) else None
    mark = began or fault.problem_mark or fault.context_mark
    message, way_out = next((words for part, words in _SYNTAX.items() if part in reason), _OTHERWISE)
    return [(mark.line + 1, mark.column + 1, message, way_out) if mark else (1, 1, message, way_out)]
