"""In what order the sticks are cut, and how often the saw is swung for it."""
