"""A cluster is asked which package it has before anything is done, and every answer but the right one ends in words."""

from concurrent.futures import CancelledError
from threading import Event

import pytest
from distributed import KilledWorker
from distributed.comm.core import CommClosedError

from service.sweep import cluster
from service.sweep.job import BadSweep

WHERE = "tcp://there.example:8786"
SAME = "a1"


class Asked:
    """A client whose scheduler and workers answer what a test wants; an error is raised."""

    def __init__(self, scheduler=SAME, workers=SAME, gathered=("done",), lacking=None):
        self.scheduler, self.workers, self.gathered, self.lacking = scheduler, workers, gathered, lacking
        self.asked = []
        self.shown = None
        self.was_waited_for = False

    def __enter__(self):
        return self

    def __exit__(self, *_ended):
        return None

    def wait_for_workers(self, count, timeout):
        self.asked.append((count, timeout))
        if self.lacking:
            raise self.lacking

    def run_on_scheduler(self, *_how):
        return self._given(self.scheduler)

    def run(self, *_how, on_error):
        assert on_error == "return"
        return self._given(self.workers)

    def compute(self, tasks, retries):
        self.asked.append((tuple(tasks), retries))
        return tasks

    def gather(self, _futures):
        return self._given(self.gathered)

    def _given(self, answer):
        if isinstance(answer, Event):
            answer.wait(5.0)
            self.was_waited_for = True
        if isinstance(answer, BaseException):
            raise answer
        return answer


@pytest.fixture
def client(monkeypatch):
    def make(**answers):
        made = Asked(**answers)
        monkeypatch.setattr(cluster, "Client", lambda *_where, **_how: made)
        monkeypatch.setattr(cluster, "progress", lambda *_futures, **how: setattr(made, "shown", how))
        return made

    return make


def test_a_cluster_with_the_same_package_is_taken(client):
    made = client(workers={"tcp://one": SAME, "tcp://other": SAME})
    cluster.check(WHERE, SAME)
    assert made.asked == [(1, 10)]


@pytest.mark.parametrize(
    ("answers", "said"),
    [
        ({"lacking": TimeoutError()}, f"the scheduler at {WHERE} has no workers"),
        ({"scheduler": "b2"}, f"the scheduler at {WHERE} has other code, tables or packs than this sweep"),
        ({"scheduler": ImportError("no service")}, f"the scheduler at {WHERE} lacks this package or its extra `sweep`"),
        ({"scheduler": ValueError("odd")}, f"the scheduler at {WHERE} cannot tell which package it has: odd"),
        ({"workers": {"tcp://one": SAME, "tcp://other": "b2"}}, "the worker at tcp://other has other code"),
        ({"workers": {"tcp://one": ImportError("x")}}, "the worker at tcp://one lacks this package"),
        ({"workers": {"tcp://one": KeyError("x")}}, "the worker at tcp://one cannot tell which package it has"),
        ({"workers": OSError("gone")}, "the workers could not be asked: gone"),
    ],
)
def test_a_cluster_that_is_not_fit_is_refused_in_words(client, answers, said):
    client(**{"workers": {"tcp://one": SAME}} | answers)
    with pytest.raises(BadSweep) as refused:
        cluster.check(WHERE, SAME)
    assert str(refused.value).startswith(said)


def test_a_scheduler_that_does_not_answer_is_not_waited_for_longer(client, monkeypatch):
    monkeypatch.setattr(cluster, "ANSWER_S", 0.05)
    silent = Event()
    made = client(scheduler=silent, workers={})
    with pytest.raises(BadSweep, match="does not answer within"):
        cluster.check(WHERE, SAME)
    assert not made.was_waited_for
    silent.set()


@pytest.mark.parametrize("error", [OSError(), TimeoutError(), ValueError()])
def test_a_scheduler_that_is_not_there_is_told(monkeypatch, error):
    def absent(*_where, **_how):
        raise error

    monkeypatch.setattr(cluster, "Client", absent)
    with pytest.raises(BadSweep, match=f"there is no Dask scheduler at {WHERE}"):
        cluster.on_cluster(WHERE, [])


# A bar of text, and only where somebody sees it move.
@pytest.mark.parametrize(("terminal", "shown"), [(True, {"notebook": False}), (False, None)])
def test_the_work_of_a_cluster_comes_back_and_a_part_is_tried_again_twice(client, monkeypatch, terminal, shown):
    monkeypatch.setattr(cluster.sys.stdout, "isatty", lambda: terminal)
    made = client(gathered=("one", "other"))
    assert cluster.on_cluster(WHERE, ["a", "b"]) == ("one", "other")
    assert made.asked == [(("a", "b"), 2)]
    assert made.shown == shown


@pytest.mark.parametrize(
    ("error", "said"),
    [
        (ImportError("no service"), "the workers need this package and its extra `sweep`: no service"),
        (KilledWorker("a", None, 3), "workers died of a part, perhaps for want of memory: try fewer --partition-rows"),
        (CancelledError(), "the scheduler is gone; the same command goes on from here"),
        (CommClosedError(), "the scheduler is gone; the same command goes on from here"),
    ],
)
def test_a_cluster_that_fails_is_told_in_words(client, error, said):
    client(gathered=error)
    with pytest.raises(BadSweep) as refused:
        cluster.on_cluster(WHERE, [])
    assert str(refused.value) == said
