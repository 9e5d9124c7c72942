"""What happens at the saw, what is left of it, and the plan of the rest."""
