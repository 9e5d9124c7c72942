"""Whether the forecast tells the truth: its chances beside what became of simulated houses."""
