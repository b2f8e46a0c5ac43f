"""What holds for every test: how long and how varied generated cases are."""

from pathlib import Path

from hypothesis import HealthCheck, settings

# The same cases in every run, so that a red test stays red until it is mended. No deadline: two test processes share
# two cores, and the first call of a cached reader is the slow one.
settings.register_profile(
    "house",
    deadline=None,
    derandomize=True,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow],
)
# `pytest --hypothesis-profile=explore` looks for new cases, many more of them.
settings.register_profile("explore", deadline=None, max_examples=2000, print_blob=True)
settings.load_profile("house")

BROWSER = Path(__file__).parent / "browser"


def pytest_collection_modifyitems(items):
    """Put the browser's tests last: from its first one on, its event loop runs in the worker, and no other can."""
    items.sort(key=lambda item: item.path.is_relative_to(BROWSER))
