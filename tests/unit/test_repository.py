"""What must hold for the repository as a whole."""

import importlib.metadata
import re
import subprocess
import tomllib
from pathlib import Path
from typing import Any

import pytest

import longpoint

ROOT = Path(__file__).resolve().parents[2]

# Written so that this file is not found by itself.
MACHINE_FOLDERS = re.compile("/(" + "|".join(("work", "root", "tmp", "farm", "home")) + ")/")
PACKAGE_HOSTS = re.compile(r"\.".join(("pypi", "org")) + "|" + "hosted".join(("python", r"\.org")))


@pytest.fixture(scope="module")
def texts() -> dict[str, str]:
    """Return the text of each file that is, or is about to be, in the repository."""
    if not (ROOT / ".git").exists():
        pytest.skip("not a checkout")
    listed = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        check=True,
        capture_output=True,
    ).stdout.decode()
    found = {}
    for name in filter(None, listed.split("\0")):
        content = (ROOT / name).read_bytes() if (ROOT / name).is_file() else b"\0"
        if b"\0" not in content:
            found[name] = content.decode("utf-8")
    return found


@pytest.fixture(scope="module")
def project() -> dict[str, Any]:
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def contracts(project: dict[str, Any]) -> dict[str, Any]:
    """Return the contract of the house's layers, and that of what the core is forbidden."""
    of_all = project["tool"]["importlinter"]["contracts"]
    return {c["type"]: c for c in of_all if c.get("containers", ["longpoint"]) == ["longpoint"]}


def pins(lock: str) -> dict[str, str]:
    """Return what a lock says of each package: version, marker and hashes, by name."""
    entries = re.split(r"\n(?=\S)", (ROOT / lock).read_text(encoding="utf-8").strip())
    return {plain_name(entry): entry for entry in entries}


def installed_requirements(package: str) -> list[str]:
    """Return what a package asks for on this machine, with none of its own extras."""
    try:
        requirements = importlib.metadata.requires(package) or []
    except importlib.metadata.PackageNotFoundError:
        return []  # Pinned for another system than this.
    return [text for text in requirements if "extra ==" not in text]


def plain_name(requirement: str) -> str:
    return re.split(r"[^A-Za-z0-9._-]", requirement)[0].lower().replace("_", "-")


def places(texts: dict[str, str], pattern: re.Pattern[str]) -> list[str]:
    return [
        f"{name}:{number}: {line.strip()[:80]}"
        for name, text in texts.items()
        for number, line in enumerate(text.splitlines(), start=1)
        if pattern.search(line)
    ]


def test_the_version_is_the_one_that_is_installed() -> None:
    assert importlib.metadata.version("longpoint") == longpoint.__version__


def test_no_file_holds_a_path_of_somebodys_machine(texts: dict[str, str]) -> None:
    assert places(texts, MACHINE_FOLDERS) == []


def test_no_file_names_a_host_that_packages_come_from(texts: dict[str, str]) -> None:
    assert places(texts, PACKAGE_HOSTS) == []


def test_the_search_for_paths_and_hosts_can_find_one() -> None:
    line = {"a.md": "see " + "/".join(("", "tmp", "x")) + " at " + "pypi" + ".org"}
    assert len(places(line, MACHINE_FOLDERS)) == len(places(line, PACKAGE_HOSTS)) == 1


@pytest.mark.parametrize("lock", ["requirements-dev.txt", "requirements-run.txt"])
def test_a_lock_holds_nothing_but_pins_with_hashes(lock: str) -> None:
    for name, entry in pins(lock).items():
        first, *others = entry.splitlines()
        assert re.fullmatch(r"[a-z0-9-]+(\[[a-z,]+\])?==[\w.]+( ; [^\\]+)? \\", first), name
        assert others, name
        for line in others:
            assert re.fullmatch(r"    --hash=sha256:[0-9a-f]{64}( \\)?", line), name


def test_an_extra_that_a_package_asks_for_is_pinned_as_such() -> None:
    """Else pip takes the newest release for it, and refuses that as unpinned."""
    locked = pins("requirements-dev.txt")
    asked = {
        (plain_name(requirement), extra)
        for name in locked
        for requirement in installed_requirements(name)
        for extra in re.findall(r"^[\w.-]+\[(\w+)\]", requirement)
    }
    assert ("coverage", "toml") in asked
    for name, extra in asked:
        assert re.match(rf"\S+\[[\w,]*\b{extra}\b", locked[name]), f"{name}[{extra}]"


def test_the_small_lock_agrees_with_the_large_one() -> None:
    assert pins("requirements-run.txt").items() <= pins("requirements-dev.txt").items()


def test_the_locks_pin_everything_that_is_asked_for(project: dict[str, Any]) -> None:
    groups = project["dependency-groups"]
    run = {plain_name(r) for r in [*project["project"]["dependencies"], *groups["install"]]}
    dev = {plain_name(r) for r in groups["dev"] if isinstance(r, str)}
    assert run <= pins("requirements-run.txt").keys()
    assert run | dev <= pins("requirements-dev.txt").keys()


def test_every_layer_below_the_shells_counts_as_core(contracts: dict[str, Any]) -> None:
    layers = contracts["layers"]["layers"]
    beside = [layer.split(" | ") for layer in layers[layers.index("phone") :]]
    # A layer in brackets is one that need not be there yet.
    below = [name for names in beside for name in names if not name.startswith("(")]
    assert contracts["forbidden"]["source_modules"] == [f"longpoint.{layer}" for layer in below]


def test_the_core_is_forbidden_every_package_the_shells_use(
    contracts: dict[str, Any], project: dict[str, Any]
) -> None:
    asked = {plain_name(r) for r in project["project"]["dependencies"]}
    assert asked <= set(contracts["forbidden"]["forbidden_modules"])


@pytest.mark.parametrize("page", ["README.md", "CONTRIBUTING.md", "ARCHITECTURE.md"])
def test_every_make_target_that_a_page_names_exists(page: str) -> None:
    if not (ROOT / page).is_file():
        pytest.skip(f"no {page} yet")
    text = (ROOT / page).read_text(encoding="utf-8")
    named = set(re.findall(r"(?:`|^\s*(?:\$ )?)make ([a-z-]+)", text, re.MULTILINE))
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    assert named <= set(re.findall(r"^([a-z-]+):", makefile, re.MULTILINE))
