"""Every finding code that the source can raise, found in its syntax trees."""

import ast
from pathlib import Path

SOURCE = Path(__file__).parents[2] / "src"


def raised_codes() -> dict[str, set[str]]:
    """Return each code with the files that raise it.

    A code is the text behind `code=`, given as itself or through a constant of upper-case name.
    """
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in SOURCE.rglob("*.py")}
    constants = {
        target.id: node.value.value
        for tree in trees.values()
        for node in ast.walk(tree)
        if isinstance(node, ast.AnnAssign | ast.Assign)
        for target in (node.targets if isinstance(node, ast.Assign) else [node.target])
        if isinstance(target, ast.Name)
        and target.id.isupper()
        and isinstance(node.value, ast.Constant)
        and isinstance(node.value.value, str)
    }
    found: dict[str, set[str]] = {}
    for path, tree in trees.items():
        for node in ast.walk(tree):
            for keyword in getattr(node, "keywords", ()):
                if keyword.arg == "code":
                    for code in _texts(keyword.value, constants):
                        found.setdefault(code, set()).add(path.name)
    return found


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
