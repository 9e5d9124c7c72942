import os
import signal
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from longpoint.cli.cluster import Certificates, cluster, sent_out
from longpoint.cli.street_house import RECORD, kept_row, plan_task
from longpoint.cli.street_sent import (
    SentHouse,
    SentSheets,
    landed,
    plan_sent,
    sent_house,
    unanswered_row,
)
from longpoint.cli.workers import Done
from longpoint.errors import ExchangeError
from longpoint.sheets.street_rows import HouseState
from tests.house_documents import window
from tests.unit.cli.house_files import written
from tests.unit.cli.test_street import planned, published, street_of, task


@pytest.fixture(scope="module")
def scheduler() -> Iterator[str]:
    """Two workers, each a process; one that is killed is started again."""
    distributed = pytest.importorskip("distributed")
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, dashboard_address=":0", memory_limit=None
    ) as local:
        yield local.scheduler_address


@dataclass(frozen=True)
class Trapped:
    """A house, and the flag of a trap that ends the first worker to get it."""

    sent: SentHouse
    flag: Path


def plan_trapped(trapped: Trapped) -> SentSheets:
    """Plan a house; its first worker is killed in the middle of it."""
    answer = plan_sent(trapped.sent)
    if not trapped.flag.exists():
        trapped.flag.touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return answer


def always_killed(_: int) -> int:
    os.kill(os.getpid(), signal.SIGKILL)
    return 0


def test_a_cluster_publishes_what_processes_of_ours_do(tmp_path: Path, scheduler: str) -> None:
    folder = street_of(tmp_path / "lane", "Unit 1", "Unit 2")

    own = planned(folder, tmp_path / "own", "--at-once", "1")
    theirs = planned(folder, tmp_path / "theirs", "--scheduler", scheduler)

    assert theirs.exception is None or isinstance(theirs.exception, SystemExit), theirs.exc_info
    assert own.exit_code == theirs.exit_code == 1, own.output + theirs.output
    assert published(tmp_path / "own") == published(tmp_path / "theirs")
    assert "for a network of your own only" in theirs.stderr
    again = planned(folder, tmp_path / "theirs", "--at-once", "1")
    assert "2 of 3 unchanged" in again.stderr


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="no such signal here")
def test_a_house_whose_worker_is_killed_is_planned_by_another(
    tmp_path: Path, scheduler: str
) -> None:
    file, flag = written(tmp_path, window()), tmp_path / "flag"
    here, there = task(file, tmp_path / "here" / "h"), task(file, tmp_path / "there" / "h")
    sent = sent_house(there)
    assert sent is not None

    with cluster(scheduler, None) as client:
        (done,) = sent_out(client, [Trapped(sent, flag)], plan_trapped)

    assert flag.exists()
    assert done.answer is not None
    assert landed(done.answer, there) == plan_task(here) == kept_row(there)
    assert published(there.out) == published(here.out)


@pytest.mark.long
def test_a_task_that_kills_every_worker_is_told_as_lost(scheduler: str) -> None:
    with cluster(scheduler, None) as client:
        assert list(sent_out(client, [1], always_killed)) == [Done(0, None, lost=1)]


def test_a_worker_of_another_version_writes_nothing(tmp_path: Path) -> None:
    file = written(tmp_path, window())
    wanted = task(file, tmp_path / "out")
    sent = sent_house(wanted)
    assert sent is not None
    came = plan_sent(sent)

    row = landed(came, replace(wanted, draws=200))
    unpacked = landed(replace(came, files={RECORD: b"{}"}), wanted)

    assert row.state is unpacked.state is HouseState.REFUSED
    assert not wanted.out.exists()
    assert landed(came, wanted).state is HouseState.READY


def test_names_that_lead_out_of_the_folder_are_not_written(tmp_path: Path) -> None:
    wanted = task(written(tmp_path, window()), tmp_path / "deep" / "out")
    sent = sent_house(wanted)
    assert sent is not None
    came = plan_sent(sent)
    names = ("../../up", "/up", "drawings/../up", "..\\up", "..")
    evil = {name: zlib.compress(b"x") for name in names}

    landed(SentSheets(came.row, {**came.files, **evil}), wanted)

    there = {path.name for path in tmp_path.rglob("*")}
    assert RECORD in there
    assert "up" not in there
    assert "..\\up" not in there


def test_a_house_that_went_bad_voids_the_sheets_that_came_before(tmp_path: Path) -> None:
    file = written(tmp_path, window())
    wanted = task(file, tmp_path / "out")
    plan_task(wanted)
    file.write_text("{", encoding="utf-8")
    sent = sent_house(wanted)
    assert sent is not None

    assert landed(plan_sent(sent), wanted).state is HouseState.REFUSED
    assert '"state": "stale"' in (wanted.out / "plan.json").read_text(encoding="utf-8")
    assert len(unanswered_row(wanted).refusal) == 3


def test_a_file_that_is_not_there_is_not_sent(tmp_path: Path) -> None:
    assert sent_house(task(tmp_path / "none.toml", tmp_path / "out")) is None


def test_a_missing_library_and_a_silent_address_are_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def absent(name: str) -> Any:  # noqa: ANN401
        raise ModuleNotFoundError(name)

    pytest.importorskip("distributed")
    monkeypatch.setattr("longpoint.cli.cluster.PATIENCE_S", 0.2)
    with (
        pytest.raises(ExchangeError, match="No scheduler answers"),
        cluster("tcp://127.0.0.1:1", None),
    ):
        pass
    monkeypatch.setattr("importlib.import_module", absent)
    with pytest.raises(ExchangeError, match=r"isn't installed"), cluster("tcp://127.0.0.1:1", None):
        pass


@pytest.mark.long
def test_a_cluster_with_certificates_lets_in_only_who_holds_one(tmp_path: Path) -> None:
    distributed = pytest.importorskip("distributed")
    security = distributed.security.Security.temporary()
    parts = ("tls_ca_file", "tls_client_cert", "tls_client_key")
    files = [tmp_path / f"{part}.pem" for part in parts]
    for part, file in zip(parts, files, strict=True):
        file.write_text(getattr(security, part), encoding="ascii")
    with distributed.LocalCluster(
        n_workers=1,
        threads_per_worker=1,
        processes=False,
        dashboard_address=":0",
        protocol="tls://",
        security=security,
    ) as local:
        address = local.scheduler_address
        with cluster(address, Certificates(*files)) as client:
            assert [done.answer for done in sent_out(client, [-2], abs)] == [2]
        with pytest.raises(ExchangeError), cluster(address, None):
            pass
        with pytest.raises(ExchangeError), cluster("tcp://127.0.0.1:1", Certificates(*files)):
            pass
