"""What a row of pieces with leaning ends uses of a stick, and the bounds that come of it."""
