"""The fixed words of the pages, by language: everything on a page that the book itself does not say.

A template takes them as ``t``: ``{{ t.why }}``, and where a figure stands in them ``{{ t.step_of.format(n=3, of=14) }}``.
"""

from __future__ import annotations

WORDS: dict[str, dict[str, str]] = {
    "en": {
        # home
        "home_lead": "How we do each job: the steps in order, the figures to hit, and the reason for each.",
        "home_use": "Pick the job. Read it through once. Then work down it, step by step.",
        "search_hint": "Search jobs, tools, words",
        "by_trade": "By trade",
        "by_tool": "By tool",
        "by_order": "By what comes before and after",
        "comes_before": "Before it",
        "comes_after": "After it",
        "none_yet": "Nothing written yet.",
        "nothing": "nothing",
        # navigation
        "home": "Home",
        "reference": "Reference",
        "people": "People",
        "crew_lead": "Who is on the crew, and which jobs each may do alone.",
        "trained_in": "May do alone",
        "role_owner": "Owner",
        "role_lead": "Lead",
        "role_helper": "Helper",
        "role_friend": "Specialist friend",
        # counts
        "one_procedure": "1 procedure",
        "many_procedures": "{n} procedures",
        "one_calculator": "1 calculator",
        "many_calculators": "{n} calculators",
        "one_source": "1 published source",
        "many_sources": "{n} published sources",
        "procedures": "Procedures",
        "calculators": "Calculators",
        # procedure: top
        "also_called": "Also called",
        "revision": "Revision",
        "revision_n": "Revision {n}",
        "who": "Who",
        "who_helper": "Helper",
        "who_lead": "Lead",
        "who_licensed_person": "Licensed person",
        "crew": "Crew",
        "one_person": "1 person",
        "many_persons": "{n} people",
        "labour": "Labour",
        "closes": "Closes",
        "closes_for": "for",
        "for_each": "for",
        "alone": "Who may do it alone",
        "reserved": "Only a licensed person",
        "on_this_page": "On this page",
        # procedure: sections
        "before": "Before you start",
        "tools": "Tools",
        "protection": "Wear",
        "rented": "rented",
        "materials": "Materials",
        "how_worked_out": "How it is worked out",
        "steps": "Steps",
        "acceptance": "Done right when",
        "after": "What comes next",
        "questions": "Questions",
        "questions_lead": "Answer first, then open.",
        "sources": "Sources",
        "changed": "Changed",
        "approved_by": "Approved by",
        "date": "Date",
        # step
        "step": "Step",
        "step_of": "Step {n} of {of}",
        "why": "Why",
        "measure": "Measure",
        "at_least": "at least",
        "at_most": "at most",
        "to": "to",
        "outside": "If outside",
        "check": "Check",
        "passes": "Good",
        "fails": "If not",
        "guards": "Guards step",
        "hold": "Hold point",
        "hold_stop": "Stop here.",
        "inspects": "Inspects",
        "looks_at": "Looks at",
        "call_ahead": "Call ahead",
        # calculators and tables
        "our_standard": "our standard",
        "does_not_fit": "does not fit",
        "swipe": "Slide the table sideways for the rest",
        "fixed": "For",
        "calculator": "Calculator",
        "work_it_out": "Work it out for other figures",
        "given": "Given",
        "answer": "Answer",
        "caution": "Watch",
        "formula": "Formula",
        "takes": "What it takes",
        "gives": "What it gives",
        "input": "Input",
        "usual": "Usual",
        "limits": "Limits",
        "rounded": "Rounded",
        "worked_example": "Worked example",
        "cannot_decide": "What it does not decide",
        "used_in": "Used in",
        # entries
        "terms": "Words of the trade",
        "standards": "Our standards",
        "terms_lead": "What the words mean on this crew.",
        "values_lead": "Each figure is written here once. Every page and every table takes it from here.",
        "tools_lead": "What each tool is for, and which jobs need it.",
        "materials_lead": "What to buy, what to look for, and which jobs use it.",
        "sources_lead": "The published sources behind the figures.",
        "inspections_lead": "Who must look before work goes on, and how long ahead to call.",
        "calculators_lead": "Put in a measurement, get the figure. Each one shows its working and its source.",
        "inspections": "Inspections",
        "see_also": "See also",
        "counted_in": "Counted in",
        "supplier": "From",
        "buy": "When buying",
        "sets": "Sets",
        "protects": "protection",
        "not_used": "Not used in a procedure yet.",
        # what stands on a printed page, or is written on it
        "foot": "{title} - revision {n}, {date}, approved by {by}",
        "write_job": "Job",
        "write_by": "Done by",
        "write_date": "Date",
        "reading": "Reading",
        "passed_by": "Passed by, date",
    },
}
"""Language to words, keyed by name."""


def words(language: str = "en") -> dict[str, str]:
    """The fixed words in that language, and in English where it lacks one.

    >>> words()["why"]
    'Why'
    """
    return {**WORDS["en"], **WORDS.get(language, {})}
