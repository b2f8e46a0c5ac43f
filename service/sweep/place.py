"""Where tables come from and results go: a path of this machine or a URI that `pyarrow.fs` knows, such as s3://."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import NamedTuple
from uuid import uuid4

import pyarrow as pa
import pyarrow.fs as pafs

from service.sweep.job import BadSweep

_READ_BYTES = 1 << 20
# Left to itself the library asks for a quarter of an hour before it says that nobody answers.
GOOGLE_PATIENCE_S = 30
_LONGEST_WORDS = 200


class Place(NamedTuple):
    """A file or folder on some file system."""

    files: pafs.FileSystem
    path: str

    def __truediv__(self, name: str) -> Place:
        """Return what has this name in the folder."""
        return Place(self.files, f"{self.path.rstrip('/')}/{name}")

    @property
    def name(self) -> str:
        """Return its name without the folders."""
        return self.path.rstrip("/").rpartition("/")[2]

    def is_file(self) -> bool:
        """Return whether there is such a file."""
        return bool(self.files.get_file_info(self.path).type == pafs.FileType.File)

    def written_s(self) -> float | None:
        """Return when the file was last written [s since the epoch]; None where there is none or nobody knows."""
        found = self.files.get_file_info(self.path)
        return found.mtime_ns / 1e9 if found.type == pafs.FileType.File and found.mtime_ns else None

    def names(self) -> list[str]:
        """Return the names of the files in the folder, in order; none where there is no folder."""
        found = self.files.get_file_info(pafs.FileSelector(self.path, allow_not_found=True))
        return sorted(each.base_name for each in found if each.type == pafs.FileType.File)

    def make_folder(self) -> None:
        """Make the folder, and those that it lies in."""
        self.files.create_dir(self.path, recursive=True)

    def read(self) -> bytes:
        """Return all bytes of the file."""
        with self.files.open_input_stream(self.path) as stream:
            found: bytes = stream.read()
        return found

    def write(self, content: bytes) -> None:
        """Write the file so that it is either complete or not there; readers of the folder skip dotted names."""
        folder, _, name = self.path.rpartition("/")
        draft = f"{folder}/.{name}.{uuid4().hex}.tmp"
        with self.files.open_output_stream(draft) as stream:
            stream.write(content)
        self.files.move(draft, self.path)

    def remove(self) -> None:
        """Remove the file, if there is one."""
        if self.is_file():
            self.files.delete_file(self.path)

    def sha256(self) -> str:
        """Return the hash of the file's bytes."""
        found = hashlib.sha256()
        with self.files.open_input_stream(self.path) as stream:
            while piece := stream.read(_READ_BYTES):
                found.update(piece)
        return found.hexdigest()


def place_of(written: str) -> Place:
    """Return the place that a path or a URI names.

    Raises
    ------
    BadSweep
        When no file system is known for it.
    """
    if "://" not in written:
        return Place(pafs.LocalFileSystem(), str(Path(written).resolve()))
    if written.startswith("gs://") and "retry_limit_seconds" not in written:
        written += f"{'&' if '?' in written else '?'}retry_limit_seconds={GOOGLE_PATIENCE_S}"
    try:
        files, path = pafs.FileSystem.from_uri(written)
    except (pa.ArrowException, OSError, ValueError) as error:
        raise BadSweep(f"{written} cannot be reached: {one_line(error)}") from None
    return Place(files, path)


def one_line(error: BaseException) -> str:
    """Return the first line of what an error says, fit for one sentence."""
    text = str(error).strip() or type(error).__name__
    return text.splitlines()[0][:_LONGEST_WORDS].rstrip(".")
