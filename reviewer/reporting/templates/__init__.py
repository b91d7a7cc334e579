"""Templates at full size: what is cut, drilled and marked on a flat part, to lay on the workpiece.

`making.py` makes a `Template` (`template.py`) of each flat part (`plate.py`), and of each divided
circle and opening (`holes.py`) of a design. `as_svg.py` and `as_dxf.py` write it whole, `as_pdf.py`
on sheets of A4 or Letter that are laid together by their register marks (`tiles.py`). All are the
same to the byte whenever they are made.
"""
