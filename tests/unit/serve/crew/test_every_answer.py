"""What every answer carries, whatever was asked, and what none does."""

import pytest

from longpoint.serve.crew.api import REQUESTS
from longpoint.serve.crew.refusals import ANSWER_HEADERS
from tests.crew_server import Laptop, Phone, entry
from tests.unit.serve.crew.raw_requests import JSON, SHARE, sent


@pytest.mark.parametrize(
    ("method", "path", "more"),
    [
        ("GET", "/", {}),
        ("GET", "/crew/me", {}),
        ("GET", "/nothing", {}),
        ("PUT", "/crew/me", {}),
        ("TRACE", "/", {}),
        ("GET", "/", {"Host": "elsewhere.example"}),
        ("POST", "/crew/knock", {"Origin": "null"}),
        ("POST", "/crew/knock", {"Content-Length": "x", **JSON}),
    ],
)
def test_every_answer_carries_its_headers(
    laptop: Laptop, method: str, path: str, more: dict[str, str]
) -> None:
    (_, headers, _), _ = sent(laptop, path, method=method, headers=more)
    assert {name.lower() for name in ANSWER_HEADERS} <= headers.keys()
    assert "'unsafe-eval'" not in headers["content-security-policy"]
    assert "frame-ancestors 'none'" in headers["content-security-policy"]
    assert headers["strict-transport-security"].startswith("max-age=")
    assert "server" not in headers


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "TRACE", "OPTIONS", "CONNECT"])
def test_other_methods_are_refused(laptop: Laptop, method: str) -> None:
    for path in ("/", "/crew/me", SHARE):
        (status, headers, _), _ = sent(laptop, path, method=method)
        assert status in {405, 403, 415}
        assert "access-control-allow-origin" not in headers


def test_the_name_localhost_is_not_bound_to_https(laptop: Laptop) -> None:
    (_, headers, _), _ = sent(laptop, "/", headers={"Host": "localhost:8621"})
    assert "strict-transport-security" not in headers


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/app.mjs", "text/javascript; charset=utf-8"),
        ("/core.wasm", "application/wasm"),
        ("/crew/openapi.json", "application/json"),
        ("/crew/me", "application/json"),
        ("/nothing", "application/json"),
    ],
)
def test_every_answer_says_what_it_is(laptop: Laptop, path: str, kind: str) -> None:
    (laptop.app_folder / "app.mjs").write_text("export {}", encoding="utf-8")
    (_, headers, _), _ = sent(laptop, path)
    assert headers["content-type"] == kind


def test_an_answer_has_no_more_than_the_document_says(phone: Phone) -> None:
    described = {r.name: r.answers[200] for r in REQUESTS if 200 in r.answers}
    shared = phone.share("h", [entry("p", 1)]).json()
    (house,) = phone.get("/crew/houses").json()
    assert set(shared) == set(described["share"]["properties"])
    assert set(house) == set(described["houses"]["items"]["properties"])
    assert set(phone.get("/crew/me").json()) == set(described["me"]["properties"])
