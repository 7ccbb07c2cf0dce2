"""The compiler of calculators: a typed subset of Python to script.

``sources`` finds functions and constants, ``types`` says what is known of a value, ``expressions``, ``calls`` and
``functions`` write script, ``program`` follows what functions use, ``bundle`` makes the files that a page loads.
"""
