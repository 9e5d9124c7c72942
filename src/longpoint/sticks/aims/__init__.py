"""What is still open once the cost is settled: fewer sticks, one long offcut, big pieces first."""
