"""Calculators for doors and locks: what to bore and where, which lock on which door."""
