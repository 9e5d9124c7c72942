"""The error tree is complete and every error and finding is told in three sentences."""

import ast
import importlib
import inspect
import pkgutil
import re
from pathlib import Path

import pytest

import longpoint
from longpoint import errors
from longpoint.errors import Finding, LongpointError, Severity, held_places

SOURCES = sorted(Path(longpoint.__file__).parent.rglob("*.py"))
SENTENCE_ENDS = (".", "?", "!")


def tree() -> list[type[LongpointError]]:
    """Return every error class of errors.py, each before those that are derived from it."""

    def below(error: type[LongpointError]) -> list[type[LongpointError]]:
        own = [c for c in error.__subclasses__() if c.__module__ == errors.__name__]
        return [error, *(c for child in own for c in below(child))]

    return below(LongpointError)


def drawn() -> list[tuple[int, str]]:
    """Return the tree of the module docstring: indentation and name of each line."""
    lines = re.findall(r"^( +)(\w+Error) {2,}\S", errors.__doc__ or "", re.MULTILINE)
    return [(len(indent), name) for indent, name in lines]


def depth(error: type[LongpointError]) -> int:
    return error.__mro__.index(LongpointError)


def calls(path: Path) -> list[ast.Call]:
    parsed = ast.parse(path.read_text(encoding="utf-8"))
    return [node for node in ast.walk(parsed) if isinstance(node, ast.Call)]


def last_literal(node: ast.expr) -> str | None:
    """Return the text that a written sentence ends with, None where only a run can tell."""
    match node:
        case ast.Constant(value=str(text)):
            return text
        case ast.JoinedStr(values=[*_, ast.Constant(value=str(text))]):
            return text
        case _:
            return None


def name_of(call: ast.Call) -> str:
    return call.func.id if isinstance(call.func, ast.Name) else ""


@pytest.mark.parametrize("error", tree(), ids=lambda error: error.__name__)
def test_every_error_carries_three_sentences(error: type[LongpointError]) -> None:
    raised = error("It was read.", "It is wrong.", "Do this.")
    assert (raised.read, raised.wrong, raised.do) == ("It was read.", "It is wrong.", "Do this.")
    assert str(raised) == "It was read. It is wrong. Do this."
    assert list(inspect.signature(error).parameters)[:3] == ["read", "wrong", "do"]


@pytest.mark.parametrize("error", tree(), ids=lambda error: error.__name__)
def test_no_error_can_be_made_without_all_three(error: type[LongpointError]) -> None:
    with pytest.raises(TypeError):
        error("It was read.", "It is wrong.")  # type: ignore[call-arg]


def test_the_drawn_tree_is_the_tree() -> None:
    found = [(depth(error), error.__name__) for error in tree()]
    indents = sorted({indent for indent, _ in drawn()})
    assert [(indents.index(indent), name) for indent, name in drawn()] == found


def test_every_error_that_leaves_a_module_belongs_to_the_tree() -> None:
    for module in pkgutil.walk_packages(longpoint.__path__, "longpoint."):
        if not module.name.startswith(("longpoint.cli", "longpoint.render", "longpoint.solvers")):
            importlib.import_module(module.name)

    def below(error: type[Exception]) -> set[type[Exception]]:
        return {error}.union(*(below(c) for c in error.__subclasses__()))

    own = {c for c in below(Exception) if c.__module__.split(".")[0] == "longpoint"}
    assert set(tree()) <= own
    outside = {c for c in own if not issubclass(c, LongpointError)}
    assert [c for c in outside if not c.__name__.startswith("_")] == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.name)
def test_what_is_written_in_an_error_or_finding_ends_like_a_sentence(path: Path) -> None:
    names = {error.__name__ for error in tree()}
    for call in calls(path):
        sentences: list[ast.expr] = []
        if name_of(call) in names and not any(isinstance(a, ast.Starred) for a in call.args):
            assert len(call.args) == 3, f"{path.name}:{call.lineno}"
            sentences = call.args
        elif name_of(call) == "Finding":
            given = {k.arg: k.value for k in call.keywords}
            assert {"code", "severity", "place", "read", "wrong", "do"} <= given.keys()
            sentences = [given["read"], given["wrong"], given["do"]]
        for sentence in sentences:
            text = last_literal(sentence)
            assert text is None or text.rstrip().endswith(SENTENCE_ENDS), (
                f"{path.name}:{sentence.lineno}: {text}"
            )


def test_a_finding_reads_as_one_paragraph_after_its_place() -> None:
    finding = Finding(
        code="x",
        severity=Severity.WARNING,
        place="W1",
        read="It was read.",
        wrong="It is wrong.",
        do="Do this.",
    )
    assert str(finding) == "W1: It was read. It is wrong. Do this."


def test_only_a_stop_holds_its_place() -> None:
    findings = [
        Finding(code="x", severity=severity, place=severity, read="", wrong="", do="")
        for severity in Severity
    ]
    assert held_places(findings) == {"stop"}
    assert held_places([]) == frozenset()
