"""`longpoint serve` and `longpoint crew`: a real process, asked over https as a phone asks."""

import io
import queue
import ssl
from collections.abc import Iterator
from pathlib import Path

import pytest
import segno
from click.testing import CliRunner

from longpoint.cli import crew_folder
from longpoint.cli.crew_extra import refuse_without_extra
from longpoint.cli.main import main
from longpoint.cli.serve import Porch
from longpoint.errors import ExchangeError
from longpoint.serve import app_files
from longpoint.serve.authority import fingerprint
from longpoint.serve.crew import Doors, Member, Members
from longpoint.store.sqlite_store import open_to_read
from tests.crew_server import entry
from tests.serving_process import Serving, serving_process


@pytest.fixture
def serving(tmp_path: Path) -> Iterator[Serving]:
    with serving_process(tmp_path) as found:
        yield found


def test_a_phone_comes_in_shares_and_is_put_out(serving: Serving) -> None:
    with serving.client() as phone:
        serving.let_in(phone, "kimsphone")
        given = {"seen": {}, "entries": [entry("kimsphone", 1, "wren")]}
        assert phone.post("/crew/houses/wren/share", json=given).status_code == 200
        assert "Kim's phone: until" in serving.run("list")
        assert "is out" in serving.run("out", "Kim's phone")
        assert phone.post("/crew/houses/wren/share", json=given).status_code == 401
    assert "shared: device kimsphone, took 1" in serving.run("log")
    store = open_to_read(serving.folder / "houses.store")
    assert store.houses() == ("wren",)
    store.close()


def test_whoever_is_not_let_in_stays_out(serving: Serving) -> None:
    with serving.client() as phone:
        assert phone.get("/").status_code == 200
        body = {"token": serving.token, "name": "\u202emalory", "device": "m"}
        assert phone.post("/crew/knock", json=body).status_code == 422
        body["name"] = "Mal"
        knocked = phone.post("/crew/knock", json=body).json()
        serving.read("Let it in")
        serving.type("")
        serving.read("Not let in")
        assert phone.post("/crew/let-in", json={"waiting": knocked["waiting"]}).status_code == 403
    assert "No phone was let in yet" in serving.run("list")


def test_what_is_missing_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(ExchangeError, match="nosuchpackage"):
        refuse_without_extra(["json", "nosuchpackage"])
    assert app_files.BUILT.name == "app"


def test_a_name_that_nobody_has_is_refused(tmp_path: Path) -> None:
    store = str(tmp_path / "houses.store")
    answer = CliRunner().invoke(main, ["crew", "out", "Kim", "--store", store])
    assert answer.exit_code == 2
    assert "No phone is called so" in answer.stderr


def test_the_certificate_for_phones_is_the_one_that_is_served(tmp_path: Path) -> None:
    before = tmp_path / "before.crt"
    words = ["crew", "authority", str(before), "--store", str(tmp_path / "houses.store")]
    answer = CliRunner().invoke(main, words)
    assert answer.exit_code == 0, answer.output
    assert CliRunner().invoke(main, words).exit_code == 2
    with serving_process(tmp_path) as serving:
        served = ssl.get_server_certificate(
            ("127.0.0.1", int(serving.address.rpartition(":")[2])), ca_certs=str(before)
        )
    assert served.startswith("-----BEGIN CERTIFICATE-----")
    authority = tmp_path / "houses.store.crew" / "authority.crt"
    assert fingerprint(authority.read_bytes()) in answer.output
    assert before.read_bytes() == authority.read_bytes()


def test_a_lost_key_is_said_at_the_laptop_and_a_new_authority_is_made_when_asked(
    tmp_path: Path,
) -> None:
    store = str(tmp_path / "houses.store")
    with serving_process(tmp_path):
        pass
    (tmp_path / "houses.store.crew" / "authority.key").unlink()
    with serving_process(tmp_path) as serving:
        pass
    assert any("authority.key is lost: this is served until" in line for line in serving.said)
    answer = CliRunner().invoke(
        main, ["crew", "authority", str(tmp_path / "new.crt"), "--anew", "--store", store]
    )
    assert answer.exit_code == 0, answer.output
    assert "Every phone has to trust it anew" in answer.output
    with serving_process(tmp_path) as serving:
        pass
    assert not any("authority.key is lost" in line for line in serving.said)


def test_the_picture_of_the_code_is_the_code_and_goes_at_the_end(tmp_path: Path) -> None:
    with serving_process(tmp_path) as serving:
        picture = tmp_path / "houses.store.crew" / "code.svg"
        drawn = picture.read_bytes()
        expected = io.BytesIO()
        code = segno.make(f"{serving.address}/#crew={serving.token}", error="l", micro=False)
        code.save(expected, kind="svg", scale=10, light="white")
        assert drawn == expected.getvalue()
    assert not picture.exists()


def test_a_code_and_a_knock_that_ran_out_are_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    now_s = [0.0]
    doors = Doors(lambda: now_s[0], check=lambda: "4711")
    lines: queue.SimpleQueue[str] = queue.SimpleQueue()
    porch = Porch(doors=doors, link="https://l/", lines=lines, picture=tmp_path / "code.svg")
    looks = iter(range(5))

    def is_over() -> bool:
        look = next(looks)
        if look == 1:
            shown = capsys.readouterr().out.split("#crew=")[1].strip()
            assert doors.knock(shown, "Kim", "kim") is not None
        elif look in (2, 3):
            now_s[0] += 130.0
        return look == 4

    assert porch.stand(is_over)
    assert capsys.readouterr().out.splitlines() == [
        "A phone that calls itself Kim shows 4711. Let it in? [y/N]",
        "Kim waited too long, and has gone.",
        "That code opens nothing any more; Enter shows a new one.",
    ]
    assert doors.waiting() == ()


def test_the_list_is_read_again_only_once_another_stands_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder, read = crew_folder.CrewFolder(tmp_path / "crew"), []
    loaded = crew_folder.LoadedMembers(folder)

    def counted(of: crew_folder.CrewFolder) -> tuple[Member, ...]:
        read.append(of)
        return load_members(of)

    load_members = crew_folder.load_members
    monkeypatch.setattr(crew_folder, "load_members", counted)
    assert loaded() == ()
    members = Members(loaded, lambda all_of: crew_folder.save_members(folder, all_of), lambda: 0.0)
    members.let_in("kimsphone", "Kim's phone")
    assert [len(loaded()) for _ in range(3)] == [1, 1, 1]
    assert len(read) <= 3
    elsewhere = Members(
        lambda: load_members(folder), lambda m: crew_folder.save_members(folder, m), lambda: 0.0
    )
    elsewhere.put_out("kimsphone")
    assert [member.is_out for member in loaded()] == [True]
