"""Wire models: what a caller may send and what comes back, each field with description, unit, range and example."""
