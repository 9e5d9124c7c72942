"""How a set of pieces is shifted on the wall until it fits, and how well it can fit at best."""
