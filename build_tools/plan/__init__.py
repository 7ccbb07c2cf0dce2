"""A job: what it takes, what to order, whom to call, and a plan that meets the date.

The way through: :mod:`~build_tools.plan.measures` puts the sizes of spaces into tasks,
:mod:`~build_tools.plan.take_off` finds hours and materials, :mod:`~build_tools.plan.prepare` makes of the tasks a
:class:`~build_tools.plan.problem.Diagnostic`, and :mod:`~build_tools.plan.solve` solves it.
:mod:`~build_tools.plan.plan` reads the dates from the solution; order list, load-out, calls and cost hang on them.
Nothing here knows pages.
"""
