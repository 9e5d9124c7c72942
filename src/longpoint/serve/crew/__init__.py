"""The crew's server: phones that were let in share the journals of houses with the laptop's store.

It never plans and never judges a reading: it passes on entries, as `journal` has them.
"""

from longpoint.serve.crew.app import Crew, crew_app
from longpoint.serve.crew.doors import Doors, Knock
from longpoint.serve.crew.guard import Guard
from longpoint.serve.crew.kept import Keeper
from longpoint.serve.crew.members import Member, Members

__all__ = ["Crew", "Doors", "Guard", "Keeper", "Knock", "Member", "Members", "crew_app"]
