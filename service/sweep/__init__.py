"""The catalogue sweep: vehicles and candidates from Parquet, every pair graded, Parquet out, on Dask."""

from service.sweep.command import main

__all__ = ["main"]
