"""A sweep in this process, on one thread."""

from collections.abc import Callable
from pathlib import Path

import pandas as pd
import pytest

from service.sweep import main


class Sweep:
    """Two tables and an output folder, and the command on them."""

    def __init__(self, place: Path) -> None:
        self.vehicles = place / "vehicles.parquet"
        self.candidates = place / "candidates.parquet"
        self.out = place / "out"

    def run(self, *more: str) -> int:
        files = ["--vehicles", str(self.vehicles), "--candidates", str(self.candidates), "--out", str(self.out)]
        return main([*files, "--threads", "1", *more])

    def pairs(self) -> pd.DataFrame:
        return pd.read_parquet(self.out / "pairs")

    def rejected(self) -> pd.DataFrame:
        return pd.read_parquet(self.out / "rejected.parquet")


@pytest.fixture
def sweep_of(tmp_path) -> Callable[[pd.DataFrame, pd.DataFrame], Sweep]:
    def make(vehicles: pd.DataFrame, candidates: pd.DataFrame) -> Sweep:
        made = Sweep(tmp_path)
        vehicles.to_parquet(made.vehicles)
        candidates.to_parquet(made.candidates)
        return made

    return make
