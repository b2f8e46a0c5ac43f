"""The mark of a sweep at work: whom it stops, for how long, and that it goes when the sweep ends."""

import errno
import json
import os
import socket
import time

import pytest

from service.sweep import running
from service.sweep.job import BadSweep
from service.sweep.place import place_of
from service.sweep.running import only_sweep

HERE = socket.gethostname()


def mark(tmp_path, seconds_old, host="elsewhere.example", process=1):
    told = {"host": host, "process": process, "token": "t", "at": time.time() - seconds_old}
    (tmp_path / ".running.json").write_text(json.dumps(told))
    return place_of(str(tmp_path))


@pytest.mark.parametrize(("seconds_old", "stops"), [(0.0, True), (25.0, True), (35.0, False)])
def test_a_mark_from_elsewhere_stops_another_for_half_a_minute(tmp_path, seconds_old, stops):
    out = mark(tmp_path, seconds_old)
    if not stops:
        with only_sweep(out):
            return
    with pytest.raises(BadSweep) as refused, only_sweep(out):
        pass
    assert str(refused.value) == (
        f"a sweep is at work in {tmp_path} (process 1 on elsewhere.example); wait for it, or stop it first"
    )


@pytest.mark.parametrize(
    ("error", "stops"),
    [(None, True), (PermissionError(), True), (ProcessLookupError(), False), (OverflowError(), False)],
)
def test_a_mark_from_here_stops_another_while_its_process_lives(monkeypatch, tmp_path, error, stops):
    """A process of somebody else's lives too: asking for it is not permitted."""
    asked = []

    def kill(process, signal):
        asked.append((process, signal))
        if error:
            raise error

    monkeypatch.setattr(running.os, "kill", kill)
    out = mark(tmp_path, 1.0, HERE, 4711)
    if stops:
        with pytest.raises(BadSweep, match=f"process 4711 on {HERE}"), only_sweep(out):
            pass
    else:
        with only_sweep(out):
            pass
    # Signal 0 asks and does nothing.
    assert asked == [(4711, 0)]


def test_a_sweep_says_who_it_is_while_it_works_and_takes_its_mark_away(tmp_path):
    before = time.time()
    with only_sweep(place_of(str(tmp_path))):
        told = json.loads((tmp_path / ".running.json").read_text())
    assert (told["host"], told["process"]) == (HERE, os.getpid())
    assert before <= told["at"] <= time.time()
    assert not (tmp_path / ".running.json").exists()


def test_a_sweep_that_fails_takes_its_mark_away_too(tmp_path):
    with pytest.raises(ZeroDivisionError), only_sweep(place_of(str(tmp_path))):
        raise ZeroDivisionError
    assert not (tmp_path / ".running.json").exists()


def test_a_sweep_at_work_says_so_again_and_again(monkeypatch, tmp_path):
    monkeypatch.setattr(running, "BEAT_S", 0.01)
    written = tmp_path / ".running.json"
    with only_sweep(place_of(str(tmp_path))):
        first = json.loads(written.read_text())["at"]
        until = time.time() + 5.0
        while json.loads(written.read_text())["at"] == first and time.time() < until:
            time.sleep(0.01)
        assert json.loads(written.read_text())["at"] > first


def test_a_sweep_speaks_several_times_before_it_is_taken_for_dead():
    assert 3.0 * running.BEAT_S <= running.SILENT_S


def test_of_two_marks_in_the_same_moment_the_later_one_wins(monkeypatch, tmp_path):
    def overtaken(place, mine):
        place.write(json.dumps({**mine._asdict(), "token": "another"}).encode())

    monkeypatch.setattr(running, "_write", overtaken)
    with pytest.raises(BadSweep, match="began in the same moment"), only_sweep(place_of(str(tmp_path))):
        pass


@pytest.mark.parametrize("number", [errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS, errno.EINVAL])
def test_a_disk_without_locks_is_left_to_the_mark(monkeypatch, tmp_path, number):
    def no_locks(_file, _how):
        raise OSError(number, "no locks")

    monkeypatch.setattr(running.fcntl, "flock", no_locks)
    with only_sweep(place_of(str(tmp_path))):
        assert (tmp_path / ".running.json").exists()


def test_a_lock_that_fails_otherwise_is_told(monkeypatch, tmp_path):
    def broken(_file, _how):
        raise OSError(errno.EIO, "broken")

    monkeypatch.setattr(running.fcntl, "flock", broken)
    with pytest.raises(OSError, match="broken"), only_sweep(place_of(str(tmp_path))):
        pass


def test_a_folder_is_free_again_when_its_sweep_has_ended(tmp_path):
    for _ in range(2):
        with only_sweep(place_of(str(tmp_path))):
            pass
