"""The house planned last: each cut at the saw, its sheets, and a better plan ask for it again."""

import json
from collections.abc import Callable, Sequence
from dataclasses import asdict

from longpoint.house_plan import HousePlan
from longpoint.phone.messages import Document, Said


class LastPlan:
    """Remembers one plan, as the same readings have the same plan; nothing depends on it.

    Attributes:
        is_first: Whether it is a first plan, made without a solver.
    """

    def __init__(self) -> None:
        self._of = ""
        self._plan: HousePlan | None = None
        self.is_first = False

    def of(
        self,
        document: Document,
        held: Sequence[Said],
        make: Callable[[HousePlan | None], HousePlan],
        *,
        with_outlook: bool,
        is_first: bool = False,
    ) -> HousePlan:
        """Return the plan of a house, made only where it isn't the one made last.

        Args:
            document: The house.
            held: What is held beforehand.
            make: Makes the plan; it is given the last one, if that was of the same readings.
            with_outlook: A plan without forecast won't do; one with it always does, as the
                forecast changes nothing that is cut.
            is_first: A first plan will do; a final one always does.
        """
        asked = json.dumps([document, [asdict(said) for said in held]], default=str)
        plan = self._plan if asked == self._of else None
        if (
            plan is None
            or (with_outlook and plan.outlook is None)
            or (self.is_first and not is_first)
        ):
            plan = make(plan)
            self._of, self._plan, self.is_first = asked, plan, is_first
        return plan
