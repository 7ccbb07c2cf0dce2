"""Calculators for the whole house: what no single trade owns."""
