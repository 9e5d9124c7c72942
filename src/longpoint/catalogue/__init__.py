"""All trim that is neither round an opening nor a skirting run, one file a kind.

In: entries of [[trims]], the house and its fitted shapes. Out: pieces, findings, drawings and
sentences for the sheet. `trim` tells what a kind is made of, `all_trims` lists them.
"""
