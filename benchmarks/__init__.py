"""Measurements of the service, written to the terminal."""
