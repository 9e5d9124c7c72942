"""Will it close: what the pieces of a house may be out by, and what that does to their joints."""
