"""The error of a command that cannot be carried out as it was called."""

from __future__ import annotations


class UsageError(Exception):
    """The command cannot be carried out as it was called; the text says why and what to write instead."""
