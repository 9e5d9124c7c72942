"""Who is let in, for how long, and how somebody is put out."""

import pytest

from longpoint.serve.crew.doors import ANSWER_S, MOST_WAITING, TOKEN_S
from longpoint.serve.crew.members import SESSION_S
from tests.crew_server import Laptop, Phone, entry


def knock(phone: Phone, token: str) -> int:
    body = {"token": token, "name": "Kim's phone", "device": phone.device}
    return phone.post("/crew/knock", body).status_code


def test_a_phone_is_let_in_by_somebody_at_the_laptop(laptop: Laptop) -> None:
    phone = Phone(laptop, "p")
    assert phone.get("/crew/me").status_code == 401
    token = laptop.doors.new_token()
    asked = phone.post("/crew/knock", {"token": token, "name": "Kim's phone", "device": "p"}).json()
    assert asked["check"] == "4711"
    assert phone.post("/crew/let-in", {"waiting": asked["waiting"]}).status_code == 202
    (waiting,) = laptop.doors.waiting()
    assert (waiting.name, waiting.check) == ("Kim's phone", "4711")
    laptop.doors.answer(waiting, let_in=True)
    answer = phone.post("/crew/let-in", {"waiting": asked["waiting"]})
    cookie = answer.headers["set-cookie"]
    assert all(word in cookie for word in ("__Host-", "Secure", "HttpOnly", "SameSite=strict"))
    phone.headers["X-Longpoint-Device"] = answer.json()["secret"]
    assert phone.get("/crew/me").json()["name"] == "Kim's phone"


def test_a_ticket_is_answered_once(laptop: Laptop) -> None:
    phone = Phone(laptop, "p")
    phone.come_in()
    assert phone.post("/crew/let-in", {"waiting": "secret-2"}).status_code == 403


def test_a_token_opens_once_and_not_for_long(laptop: Laptop) -> None:
    phone = Phone(laptop, "p")
    token = laptop.doors.new_token()
    assert knock(phone, token) == 202
    assert knock(phone, token) == 403
    late = laptop.doors.new_token()
    laptop.now_s += TOKEN_S
    assert knock(phone, late) == 403


def test_a_newer_token_shuts_the_older(laptop: Laptop) -> None:
    older, newer = laptop.doors.new_token(), laptop.doors.new_token()
    assert knock(Phone(laptop, "p"), older) == 403
    assert knock(Phone(laptop, "p"), newer) == 202


def test_who_is_refused_or_waits_too_long_stays_out(laptop: Laptop) -> None:
    phone = Phone(laptop, "p")
    for is_late in (False, True):
        body = {"token": laptop.doors.new_token(), "name": "Kim", "device": "p"}
        ticket = phone.post("/crew/knock", body).json()["waiting"]
        if is_late:
            laptop.now_s += ANSWER_S
        else:
            laptop.doors.answer(laptop.doors.waiting()[0], let_in=False)
        assert phone.post("/crew/let-in", {"waiting": ticket}).status_code == 403
    assert laptop.members == []


def test_no_more_wait_at_the_door_than_make_a_crew(laptop: Laptop) -> None:
    for number in range(MOST_WAITING):
        assert knock(Phone(laptop, f"p{number}"), laptop.doors.new_token()) == 202
    assert knock(Phone(laptop, "more"), laptop.doors.new_token()) == 403


def test_tokens_cannot_be_tried_out(laptop: Laptop) -> None:
    laptop.doors.new_token()
    answers = [knock(Phone(laptop, "p"), f"guess-{n}") for n in range(20)]
    assert answers.count(429) >= 9


def test_a_session_ends_after_a_month(laptop: Laptop, phone: Phone) -> None:
    assert phone.get("/crew/me").status_code == 200
    laptop.now_s += SESSION_S
    assert phone.get("/crew/me").status_code == 401


def test_a_device_that_is_put_out_is_out_at_once(laptop: Laptop, phone: Phone) -> None:
    assert phone.share("h", [entry("p", 1)]).status_code == 200
    assert laptop.kept.put_out("p")
    assert phone.share("h", [entry("p", 2)]).status_code == 401
    assert not laptop.kept.put_out("nobody")


def test_who_leaves_is_out(phone: Phone) -> None:
    cookies = dict(phone.cookies)
    assert phone.post("/crew/leave", {}).json() == {"done": True}
    phone.cookies = cookies
    assert phone.get("/crew/me").status_code == 401


def test_a_device_that_comes_in_again_has_one_session(laptop: Laptop, phone: Phone) -> None:
    old = dict(phone.cookies), dict(phone.headers)
    phone.come_in()
    again = Phone(laptop, "p", headers=old[1], cookies=old[0])
    assert again.get("/crew/me").status_code == 401
    assert phone.get("/crew/me").status_code == 200


@pytest.mark.parametrize("name", ["", "  ", "x" * 61, "a\nb", 7])
def test_a_name_is_a_short_text(laptop: Laptop, name: object) -> None:
    body = {"token": laptop.doors.new_token(), "name": name, "device": "p"}
    assert Phone(laptop, "p").post("/crew/knock", body).status_code == 422


def test_no_secret_is_written_down(laptop: Laptop, phone: Phone) -> None:
    secrets = [*phone.cookies.values(), phone.headers["X-Longpoint-Device"]]
    written = repr(laptop.members) + repr(laptop.said)
    assert secrets
    assert not any(secret in written for secret in secrets)


def test_a_phone_is_told_what_the_others_are_called_and_a_stranger_is_not(laptop: Laptop) -> None:
    kim, sam = Phone(laptop, "p"), Phone(laptop, "q")
    kim.come_in("Kim's phone")
    sam.come_in("Sam's phone")
    laptop.kept.put_out("q")
    told = kim.get("/crew/phones").json()
    assert {each["device"]: each["name"] for each in told} == {
        "p": "Kim's phone",
        "q": "Sam's phone",
    }
    assert all(each.keys() == {"device", "name"} for each in told)
    assert sam.get("/crew/phones").status_code == 401
