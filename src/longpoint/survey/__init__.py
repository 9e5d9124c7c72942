"""What was written down on site: instruments, readings, openings, rooms, stock.

In: a house file's tables (`longpoint.survey.house_file`). Out: a `House`, and findings about what
was written, before any geometry. Nothing is corrected here: a slip is proposed, never applied.
"""
