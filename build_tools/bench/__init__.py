"""The benchmark: a large book, built by this project and as hand-written Markdown by bare MkDocs, in one run.

``words`` and ``invent`` make up the book, ``markdown`` writes the same text as Markdown pages, ``measure`` runs and
times programs, ``run`` does it all and holds the results against the budgets.
"""
