"""The shape of the book: what may stand in each YAML file.

``base`` holds the small types that the rest is made of, ``procedure`` and ``step`` one procedure, ``table`` the calls
of calculators, ``reference`` the entries of ``procedures/reference`` and ``procedures/crew``.
"""
