"""Hands the phone app to a browser on this machine, or to any web host as a folder.

In: the app as `make app` built it. Out: its files, over loopback or copied. Nothing of a house
passes through here: readings stay in the browser that they were typed into.
"""
