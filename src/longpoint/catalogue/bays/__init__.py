"""What runs round the corners of a bay of windows."""
