"""Parts as solids: each shape as a construction of plain bodies, and the solid kernel that makes it exact.

A construction knows no kernel: it is bodies of revolution, prisms and coils,
joined and cut, each with a ring of lines and true arcs. :mod:`kernel` makes a
boundary solid of it, :mod:`tommybar.shapes.mesh` a mesh; both therefore show
the same features. ``kernel`` is the one file that knows the solid kernel.
"""
