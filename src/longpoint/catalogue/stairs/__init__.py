"""What follows the rake of a stair."""
