"""Who does the work of a street: processes of this machine, or the machines of a cluster."""

from collections.abc import Generator, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from longpoint.cli.cluster import sent_out
from longpoint.cli.street_house import HouseTask, lost_row, plan_task
from longpoint.cli.street_sent import landed, plan_sent, sent_house, unanswered_row
from longpoint.cli.workers import Done, shared_out
from longpoint.errors import LongpointError
from longpoint.sheets.street_rows import HouseRow
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import say
from longpoint.sticks.joint_buying import Batch, Joint, buy_together, left_out


class Hands(Protocol):
    """Plan houses and buy for them; what is done comes as soon as it is there."""

    def plan(self, tasks: Sequence[HouseTask]) -> Generator[Done[HouseRow], None, None]:
        """Yield the row of each house, its sheets written."""
        ...

    def buy(self, loads: Sequence[Batch]) -> Generator[Done[Joint], None, None]:
        """Yield what each batch buys together."""
        ...


@dataclass(frozen=True, slots=True)
class OwnProcesses:
    """So many processes of this machine at a time."""

    at_once: int

    def plan(self, tasks: Sequence[HouseTask]) -> Generator[Done[HouseRow], None, None]:
        """Yield the row of each house; one whose process is killed is tried once more."""
        for done in shared_out(tasks, plan_task, self.at_once):
            lost = done.is_last and done.answer is None
            yield Done(done.place, lost_row(tasks[done.place]), done.lost) if lost else done

    def buy(self, loads: Sequence[Batch]) -> Generator[Done[Joint], None, None]:
        """Yield what each batch buys together."""
        return shared_out(loads, buy_load, self.at_once)


@dataclass(frozen=True, slots=True)
class Cluster:
    """The workers of a Dask cluster.

    Attributes:
        client: As from `cluster.cluster`.
    """

    client: Any

    def plan(self, tasks: Sequence[HouseTask]) -> Generator[Done[HouseRow], None, None]:
        """Yield the row of each house, what came back written here."""
        places, sent = [], []
        for place, task in enumerate(tasks):
            if (house := sent_house(task)) is None:
                # What can't be read here is refused here, in the usual words.
                yield Done(place, plan_task(task))
            else:
                places.append(place)
                sent.append(house)
        for done in sent_out(self.client, sent, plan_sent):
            place = places[done.place]
            task = tasks[place]
            row = landed(done.answer, task) if done.answer is not None else unanswered_row(task)
            yield Done(place, row, done.lost)

    def buy(self, loads: Sequence[Batch]) -> Generator[Done[Joint], None, None]:
        """Yield what each batch buys together."""
        return sent_out(self.client, loads, buy_load)


def buy_load(batch: Batch) -> Joint:
    """Return what a batch buys together, with the solver that is installed."""
    try:
        return buy_together(batch, linear_solver())
    except LongpointError as error:
        return left_out(batch, say("its plan failed: {wrong}", wrong=error.wrong))
