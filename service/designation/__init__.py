"""Designations: what a sidewall or a rim says, as plain data and back."""
