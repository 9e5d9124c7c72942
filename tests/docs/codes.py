"""Every finding code that the source can raise, found in its syntax trees."""

import ast
from collections.abc import Iterator
from pathlib import Path

SOURCE = Path(__file__).parents[2] / "src"
NAMES = frozenset({"code", "unknown_code", "unreadable_code"})
"""Parameters that hand a code on."""


def raised_codes() -> frozenset[str]:
    """Return every code, given as text or through a constant of upper-case name."""
    trees = [ast.parse(path.read_text(encoding="utf-8")) for path in SOURCE.rglob("*.py")]
    nodes = [node for tree in trees for node in ast.walk(tree)]
    constants = dict(_constants(nodes))
    handed = {
        node.name: position
        for node in nodes
        if isinstance(node, ast.FunctionDef)
        for position, arg in enumerate(node.args.args)
        if arg.arg in NAMES
    }
    found: set[str] = set()
    for node in nodes:
        for value in _code_values(node, handed):
            found.update(_texts(value, constants))
    return frozenset(found - {""})


def _code_values(node: ast.AST, handed: dict[str, int]) -> Iterator[ast.expr]:
    """Give what stands where a code is handed on: by name, by position, or as a default."""
    match node:
        case ast.Call(func=ast.Name(id=name), args=args, keywords=keywords):
            if name in handed and len(args) > handed[name]:
                yield args[handed[name]]
            yield from (k.value for k in keywords if k.arg in NAMES)
        case ast.Call(keywords=keywords):
            yield from (k.value for k in keywords if k.arg in NAMES)
        case ast.arguments(kwonlyargs=arguments, kw_defaults=defaults):
            for argument, default in zip(arguments, defaults, strict=True):
                if argument.arg in NAMES and default is not None:
                    yield default
        case _:
            pass


def _constants(nodes: list[ast.AST]) -> Iterator[tuple[str, str]]:
    for node in nodes:
        match node:
            case ast.AnnAssign(target=ast.Name(id=name), value=ast.Constant(value=str(text))):
                yield name, text
            case ast.Assign(targets=[ast.Name(id=name)], value=ast.Constant(value=str(text))) if (
                name.isupper()
            ):
                yield name, text


def _texts(value: ast.expr, constants: dict[str, str]) -> list[str]:
    match value:
        case ast.Constant(value=str(text)):
            return [text]
        case ast.Name(id=name) if name in constants:
            return [constants[name]]
        case ast.IfExp(body=body, orelse=orelse):
            return [*_texts(body, constants), *_texts(orelse, constants)]
        case _:
            return []
