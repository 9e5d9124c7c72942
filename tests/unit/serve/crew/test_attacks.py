"""What somebody with bad intent tries, each way by itself."""

import asyncio
from typing import Any, Final

import pytest

from longpoint.journal import MOST_AHEAD
from longpoint.serve.crew.api import REQUESTS
from longpoint.serve.crew.limits import ADDRESS_RATE, DEVICE_RATE
from longpoint.serve.crew.members import Members
from longpoint.store.sqlite_store import open_store
from tests.counts_ahead import COUNTS_AHEAD, Ahead
from tests.crew_server import HOST, ORIGIN, Laptop, Phone, entry
from tests.unit.serve.crew.raw_requests import JSON, SHARE, sent

STRANGERS: Final = [
    {"Origin": "https://elsewhere.example"},
    {"Origin": "null"},
    {"Origin": f"http://{HOST}"},
    {"Origin": "https://laptop.local:1"},
    {"Origin": f"{ORIGIN}.elsewhere.example"},
    {"Sec-Fetch-Site": "cross-site"},
    {"Sec-Fetch-Site": "same-site"},
]


@pytest.mark.parametrize("headers", STRANGERS)
def test_a_page_elsewhere_is_refused_even_with_every_secret(
    phone: Phone, headers: dict[str, str]
) -> None:
    body = {"entries": [entry("p", 1)], "seen": {}}
    assert phone.post(SHARE, body, headers=headers).status_code == 403
    assert phone.get("/crew/houses", headers=headers).status_code == 403
    assert phone.get("/crew/houses").json() == []


def test_a_request_that_changes_something_says_which_page_it_comes_from(phone: Phone) -> None:
    nowhere = {"Origin": "", "Sec-Fetch-Site": ""}
    answer = phone.post(SHARE, {"entries": [], "seen": {}}, headers=nowhere)
    assert answer.status_code == 403


def test_a_form_of_another_page_cannot_share(phone: Phone) -> None:
    for kind in ("application/x-www-form-urlencoded", "multipart/form-data", "text/plain", ""):
        answer = phone.ask("POST", SHARE, content=b"{}", headers={"Content-Type": kind})
        assert answer.status_code == 415


def test_a_stolen_cookie_on_another_device_opens_nothing(laptop: Laptop, phone: Phone) -> None:
    thief, other = Phone(laptop, "t"), Phone(laptop, "q")
    other.come_in("Lee's phone")
    for page in ("", "guess", other.headers["X-Longpoint-Device"]):
        thief.cookies = dict(phone.cookies)
        headers = {"X-Longpoint-Device": page}
        assert thief.get("/crew/me", headers=headers).status_code == 401
        assert thief.post("/crew/leave", {}, headers=headers).status_code == 401
        answer = thief.post(SHARE, {"entries": [entry("p", 1)], "seen": {}}, headers=headers)
        assert answer.status_code == 401
    assert {"what": "page-refused", "device": "p"} in laptop.said
    assert phone.get("/crew/houses").json() == []


def test_the_pages_secret_without_the_cookie_opens_nothing(laptop: Laptop, phone: Phone) -> None:
    thief = Phone(laptop, "t", headers=dict(phone.headers))
    assert thief.get("/crew/me").status_code == 401


def test_a_device_put_out_by_another_process_is_out_at_once(laptop: Laptop, phone: Phone) -> None:
    assert phone.get("/crew/me").status_code == 200
    Members(laptop.load, laptop.save, laptop.clock).put_out("p")
    assert phone.get("/crew/me").status_code == 401
    assert phone.share("h", [entry("p", 1)]).status_code == 401


@pytest.mark.parametrize("path", ["/", "/core.wasm", "/crew/openapi.json", "/crew/me"])
def test_a_name_that_was_bound_to_this_machine_elsewhere_is_refused(
    laptop: Laptop, path: str
) -> None:
    for host in ("", "elsewhere.example", "laptop.local", "laptop.local:1", f"{HOST}.", "[::1]"):
        (status, _, body), _ = sent(laptop, path, headers={"Host": host})
        assert status == 421, host
        assert b"doctype" not in body


OUTWARD: Final = (
    "/../houses.store",
    "/%2e%2e/houses.store",
    "/..\\houses.store",
    "//houses.store",
    "/./../houses.store",
    "/app/../../houses.store",
    "/../app-beside/secret.txt",
    "/linked.txt",
    "/\0",
    "/index.html\0.wasm",
    "/" + "a" * 5_000,
    "/" + "a/" * 2_000,
    "/\udcff",
    "/crew",
    "/crew/",
    "/crew/../../houses.store",
)


def test_no_path_leads_out_of_the_apps_files(laptop: Laptop) -> None:
    beside = laptop.app_folder.parent / "app-beside"
    beside.mkdir()
    (beside / "secret.txt").write_text("a secret", encoding="utf-8")
    (laptop.app_folder / "linked.txt").symlink_to(beside / "secret.txt")
    for path in OUTWARD:
        (status, _, body), _ = sent(laptop, path)
        assert status in {404, 405}, path
        assert b"secret" not in body
        assert b"SQLite" not in body


def test_the_key_of_a_house_is_no_path(laptop: Laptop, phone: Phone) -> None:
    before = sorted(p.name for p in laptop.store.parent.iterdir())
    headers = {**JSON, "Cookie": cookie_of(phone), **phone.headers}
    for house in ("../x", "..", "a/b", "\0", "\n", "x" * 101, "\u202ex", " "):
        (status, _, _), _ = sent(
            laptop,
            f"/crew/houses/{house}/share",
            method="POST",
            headers=headers,
            parts=(b'{"entries": [], "seen": {}}',),
        )
        assert status in {200, 404, 405, 422}, house
    assert sorted(p.name for p in laptop.store.parent.iterdir()) == before
    assert phone.get("/crew/houses").json() == []


def test_what_is_not_there_is_not_repeated(laptop: Laptop) -> None:
    for path in ("/<script>alert(1)</script>", "/crew/<script>alert(1)</script>"):
        (status, headers, body), _ = sent(laptop, path)
        assert status == 404
        assert b"alert" not in body
        assert headers["content-type"] == "application/json"


def test_one_address_cannot_keep_the_laptop_busy(laptop: Laptop, phone: Phone) -> None:
    most = int(ADDRESS_RATE.at_once)
    statuses = {phone.get("/crew/openapi.json").status_code for _ in range(most)}
    assert statuses == {200, 429}
    answer = phone.get("/crew/me")
    assert answer.status_code == 429
    assert int(answer.headers["Retry-After"]) >= 1
    laptop.now_s += 1
    assert phone.get("/crew/me").status_code == 200


def test_nothing_but_the_door_is_open(laptop: Laptop) -> None:
    stranger = Phone(laptop, "s")
    for request in REQUESTS:
        path = request.path.replace("{house}", "h")
        answer = stranger.ask(request.method, path, content=b"{}", headers=JSON)
        assert (answer.status_code == 401) is not request.is_open, path


def test_a_device_that_asks_too_often_waits_and_others_do_not(laptop: Laptop, phone: Phone) -> None:
    other = Phone(laptop, "q")
    other.come_in()
    asked = 0
    while phone.get("/crew/me").status_code == 200:
        asked += 1
        # As if from an address of its own each time: that rate is held by its own test.
        laptop.now_s += 0.02
    assert DEVICE_RATE.at_once <= asked < ADDRESS_RATE.at_once
    answer = phone.get("/crew/me")
    assert answer.status_code == 429
    assert answer.headers["Retry-After"] == "1"
    assert other.get("/crew/me").status_code == 200
    laptop.now_s += 1
    assert phone.get("/crew/me").status_code == 200


def test_a_count_far_ahead_of_everybody_is_refused_and_nothing_of_it_is_taken(
    laptop: Laptop, phone: Phone
) -> None:
    assert phone.share("h", [entry("p", 1)]).status_code == 200
    far = MOST_AHEAD + 2
    refused = phone.share("h", [entry("p", 2), entry("p", far)])
    assert refused.status_code == 422
    assert set(refused.json()) == {"read", "wrong", "do"}
    assert str(far) in refused.json()["read"]
    assert "stays on the phone" in refused.json()["do"]
    (house,) = phone.get("/crew/houses").json()
    assert house["seen"]["p"]["counter"] == 1
    assert phone.share("h", [entry("p", 2), entry("p", far - 1)]).status_code == 200
    # A house that is new here goes on from counts of the others.
    assert phone.share("new", [entry("p", far + 5, "new")]).status_code == 200


@pytest.mark.parametrize("ahead", COUNTS_AHEAD)
def test_laptop_and_phone_take_the_same_counts(ahead: Ahead, laptop: Laptop, phone: Phone) -> None:
    if ahead.highest:
        assert phone.share("h", [entry("q", ahead.highest)]).status_code == 200
    answer = phone.share("h", [entry("p", ahead.counter)])
    assert answer.status_code == (200 if ahead.is_taken else 422)


def test_what_the_laptop_keeps_for_itself_is_neither_shown_nor_shared(
    laptop: Laptop, phone: Phone
) -> None:
    own = entry("laptop", 1, ".rack", what="rack-set", set={"old_after": 1})
    store = open_store(laptop.store, "laptop")
    store.take([own])
    store.close()
    assert phone.get("/crew/houses").json() == []
    for given in ([], [entry("p", 1, ".rack", what="rack-set", set={})]):
        answer = phone.share(".rack", given)
        assert answer.status_code == 404
        assert "old_after" not in answer.text
    store = open_store(laptop.store, "laptop")
    assert [each.entry for each in store.entries(".rack")] == [own]
    store.close()


def test_no_socket_is_opened(laptop: Laptop) -> None:
    told: list[Any] = []

    async def receive() -> dict[str, str]:
        return {"type": "websocket.connect"}

    async def send(message: Any) -> None:  # noqa: ANN401
        told.append(message["type"])

    scope = {"type": "websocket", "path": "/", "headers": [(b"host", HOST.encode())]}

    async def asked() -> None:
        await laptop.app(scope, receive, send)

    asyncio.run(asked())
    assert told == ["websocket.close"]


def cookie_of(phone: Phone) -> str:
    return "; ".join(f"{name}={value}" for name, value in phone.cookies.items())
