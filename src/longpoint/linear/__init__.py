"""Linear programmes as records, the port through which they are solved, and a small solver."""
