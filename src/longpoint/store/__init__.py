"""Houses with their history, kept so that nothing that was written down is ever lost.

In: entries of a journal, plans made from them. Out: the same entries, what another device lacks,
what was planned from which readings, and whether every byte is as it was written. A refusal is a
`StoreError` in three sentences. What the entries mean is said by `phone/fold`.

`port` is what a store is asked; `sqlite` answers it from a file on this machine. Both the file's
own checks and sums of ours (`sums`, `seal`) are looked at by `verify`.
"""

from longpoint.store.port import HouseStore
from longpoint.store.records import Milestone, MilestoneKind, Taken

__all__ = ["HouseStore", "Milestone", "MilestoneKind", "Taken"]
