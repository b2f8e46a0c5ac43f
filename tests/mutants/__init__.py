"""Lines and values broken one at a time, to see whether the tests notice: `make mutants`."""
