"""Concrete and site: approaches, bases, joints."""
