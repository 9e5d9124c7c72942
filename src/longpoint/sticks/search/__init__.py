"""The least stock for the pieces of one profile: sets by price, dives, cuts, and a proof."""
