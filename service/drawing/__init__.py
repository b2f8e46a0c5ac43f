"""Scale drawings of an assessment as SVG: a section through the wheels, and their contact patches."""
