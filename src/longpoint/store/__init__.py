"""Houses with their history, kept so that nothing that was written down is ever lost.

In: entries of a journal, plans made from them. Out: the same entries, what another device lacks,
what was planned from which readings, and whether every byte is as it was written. A refusal is a
`StoreError` in three sentences. What the entries mean is said by `phone/fold`.

`port` is what a store is asked; `sqlite_store` answers it from a file on this machine,
`postgres_store` from a server. `verify` looks at the database's own checks and at sums of ours
(`sums`, `seal`).
"""

from longpoint.store.port import HouseStore
from longpoint.store.records import Milestone, MilestoneKind, Taken

__all__ = ["HouseStore", "Milestone", "MilestoneKind", "Taken"]
