"""Sheets for the shop floor: what to cut, set out, assemble, inspect and load-test, on paper.

What makes a sheet is a function from a Review to a Body: sections and cautions (`sheet.py`). It
knows nothing of the verdict, of concessions or of paper: every sheet gets those in front
(`standing.py`), and is written as text of 80 columns (`text_sheet.py`), Markdown
(`markdown_sheet.py`) or one HTML file that prints on A4 and Letter (`page_sheet.py`). Where there
is nothing to put on a sheet it returns NoSheet with the reason. Values are read through
`quantities.py`. To add a sheet, put its `Maker` into the list of `registry.py`.
"""
