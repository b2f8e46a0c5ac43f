"""Formulas of tyres, wheels and vehicles: floats or arrays in, floats or arrays out, one model per file."""
