"""Calculators for gas and power: boxes, lights and the gas meter's place."""
