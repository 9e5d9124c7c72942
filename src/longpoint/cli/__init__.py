"""The `longpoint` command: files and screen in front of the pure core."""
