"""Packs Python for a phone, by the very Python that will run it: compiled, without docstrings.

A phone then has nothing to compile and less to fetch. Of the core only what the page's requests can
come to is kept, and of Python's own library what that or Pyodide can: whatever an `import` anywhere
in a kept module names, in functions too.
"""

import ast
import importlib._bootstrap_external as external  # type: ignore[import-not-found]
import io
import zipfile
from collections.abc import Iterable, Iterator, Sequence

PAGE = ("_pyodide", "pyodide")
"""They are called from the page, and read their own docstrings."""
CODECS = ("ascii", "cp437", "idna", "latin_1", "unicode_escape", "utf_16", "utf_8", "utf_8_sig")
"""Python asks for them by their names, not by an import; cp437 is that of an archive's list."""
NEVER = frozenset(
    {("_sitebuiltins", "pydoc"), ("concurrent.futures", "concurrent.futures.process")}
)
"""The help of a prompt; other processes. There are none in a browser."""


def reached_modules(page: str, modules: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """Return those of the (path, text) pairs that the page's own Python can come to."""
    texts = {_module(path): text for path, text in modules}
    paths = {_module(path): path for path, _ in modules}
    kept = _reached(set(_imports(page, "page", is_package=False)), texts, paths)
    return sorted((paths[name], texts[name]) for name in kept)


def core_zip(modules: Iterable[tuple[str, str]], words: Iterable[tuple[str, bytes]] = ()) -> bytes:
    """Return the core as an archive: (path, text) pairs of modules, compiled, and what is said."""
    return _zipped([*((f"{path}c", _compiled(text, path)) for path, text in modules), *words])


def library_zip(whole: bytes, modules: Iterable[tuple[str, str]]) -> bytes:
    """Return of Python's library what the core can come to."""
    archive = zipfile.ZipFile(io.BytesIO(whole))
    paths = {_module(name): name for name in archive.namelist() if name.endswith(".py")}
    texts = {name: archive.read(path).decode() for name, path in paths.items()}
    begun = {name for name in paths if name.partition(".")[0] in PAGE} | {
        f"encodings.{codec}" for codec in CODECS
    }
    for path, text in modules:
        begun |= set(_imports(text, _module(path), is_package=path.endswith("__init__.py")))
    kept = _reached(begun, texts, paths)
    made = []
    for name, path in sorted(paths.items()):
        if name.partition(".")[0] in PAGE:
            made.append((f"{path}c", _compiled(texts[name], path, with_docstrings=True)))
        elif name in kept or "sysconfigdata" in name:
            made.append((f"{path}c", _compiled(texts[name], path)))
    return _zipped(made)


def _reached(begun: set[str], texts: dict[str, str], paths: dict[str, str]) -> set[str]:
    reached: set[str] = set()
    left = list(begun)
    while left:
        name = left.pop()
        if (package := name.rpartition(".")[0]) and package not in reached:
            left.append(package)
        if name in reached or name not in texts:
            continue
        reached.add(name)
        is_package = paths[name].endswith("__init__.py")
        asked = _imports(texts[name], name, is_package=is_package)
        left += [each for each in asked if (name, each) not in NEVER]
    return reached


def _imports(text: str, name: str, *, is_package: bool) -> Iterator[str]:
    """Give every module that a text may import, but for what it does when run by itself."""
    package = (name if is_package else name.rpartition(".")[0]).split(".")
    left: list[ast.AST] = [ast.parse(text)]
    while left:
        node = left.pop()
        if isinstance(node, ast.If) and ast.unparse(node.test) == "__name__ == '__main__'":
            left += node.orelse
            continue
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package[: len(package) - node.level + 1] if node.level else []
            source = ".".join([*above, *filter(None, [node.module])])
            yield source
            yield from (f"{source}.{alias.name}" for alias in node.names)
        left += ast.iter_child_nodes(node)


def _compiled(text: str, path: str, *, with_docstrings: bool = False) -> bytes:
    tree = ast.parse(text)
    if not with_docstrings:
        for node in ast.walk(tree):
            if isinstance(node, ast.Module | ast.FunctionDef | ast.AsyncFunctionDef):
                if ast.get_docstring(node, clean=False) is not None:
                    node.body[0] = ast.copy_location(ast.Pass(), node.body[0])
            elif isinstance(node, ast.ClassDef) and ast.get_docstring(node, clean=False):
                # One sign stays: without any, a dataclass would write its signature as one.
                said = ast.Expr(ast.Constant("-"))
                node.body[0] = ast.fix_missing_locations(ast.copy_location(said, node.body[0]))
        if isinstance(tree.body[0] if tree.body else None, ast.Pass) and len(tree.body) > 1:
            del tree.body[0]
    code = compile(tree, path, "exec", dont_inherit=True)
    # A hash that nobody checks: there is no source beside it.
    made: bytes = external._code_to_hash_pyc(code, b"longpnt1", False)
    return made


def _zipped(files: Iterable[tuple[str, bytes]]) -> bytes:
    """Store files as they are: compressed as one by the host they take a third less than alone."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as file:
        for path, content in files:
            file.writestr(zipfile.ZipInfo(path), content)
    return made.getvalue()


def _module(path: str) -> str:
    return path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
