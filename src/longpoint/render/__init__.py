"""Sheets onto paper: PDF and page pictures, set with our own font.

In: `Sheet` records. Out: bytes. A shell: it reads its template and fonts from this folder.
"""
