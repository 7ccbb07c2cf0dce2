"""Calculators for doors and carpentry: what to bore and where, which lock on which door, closets, cut lists."""
