"""The fixed words of the pages, by language: everything on a page that the book itself does not say.

A template takes them as ``t``: ``{{ t.why }}``, and with a figure ``{{ t.step_of.format(n=3, of=14) }}``.
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
        "whole_house": "The whole fit-out",
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
        "ask_ahead": "Ask ahead:",
        # the whole fit-out
        "fit_out": "The fit-out",
        "order_title": "The order of the fit-out",
        "order_lead": (
            "From the first stake to the keys: what comes after what, by trade, and where somebody must look."
        ),
        "order_drawn": "Drawn",
        "order_how": (
            "Time runs down. A line leads from a job to what can begin after it. The eight-sided sign marks a job"
            " with a hold point. A job that a dwelling does not have is passed over."
        ),
        "order_alt": (
            "{n} procedures in a lane for each trade, joined by lines from what comes before to what comes after."
            " The list below says the same in words."
        ),
        "order_listed": "In words",
        "order_after": "After:",
        "one_hold": "1 hold point",
        "many_holds": "{n} hold points",
        "holds_title": "Hold points and inspections",
        "holds_lead": (
            "Where the work stops until somebody has looked: who, how long ahead to call, and what may go on after."
        ),
        "holds_here": "Work stops here",
        "holds_none": "No step waits for it.",
        "step_n": "step {n}",
        "steps_n": "steps {n} to {to}",
        "dangers_title": "Dangers and what protects",
        "dangers_lead": (
            "What can hurt on these jobs, what protects from it, strongest first, and what to do when it has happened."
        ),
        "dangers_law": (
            "The law, the local code and the authority having jurisdiction ask for more than a page can say, and "
            "they decide. Emergency: 911."
        ),
        "protects_list": "What protects",
        "afterwards": "When it has happened",
        "met_at": "Where the book warns of it",
        # jobs
        "jobs": "Jobs",
        "jobs_lead": "Each dwelling that is being built: what to order, what to load, whom to call, and the plan.",
        "job_starts": "Starts",
        "job_ends": "Ends",
        "job_deadline": "Deadline",
        "job_proved": "no plan ends sooner: proved",
        "job_unproved": "an earlier end is not ruled out",
        "one_day_spare": "1 working day to spare",
        "many_days_spare": "{n} working days to spare",
        "one_day_short": "1 working day late",
        "many_days_short": "{n} working days late",
        "job_sooner": "What would bring it in",
        "job_would_end": "The job would end on",
        "one_day_sooner": "1 day sooner",
        "many_days_sooner": "{n} days sooner",
        "no_sooner": "no sooner",
        "job_pages": "Pages of this job",
        "job_changed": "Standards that are different here",
        "job_spaces": "Spaces",
        "task_done": "done",
        # jobs: calls
        "calls_title": "Calls",
        "calls_lead": "Whom to call, by when, and when they come, with the hold point that each of them releases.",
        "calls_to_make": "Calls to make",
        "calls_by": "By {time}",
        "calls_ready": "when the work is ready, {time}",
        "calls_notice": "{notice} ahead",
        "calls_unsaid": "the working day before; no notice is said",
        "calls_inspection": "inspection",
        "calls_delivery": "delivery",
        "calls_rental": "rented tool",
        "calls_friend": "friend of the crew",
        "calls_come": "Comes",
        "calls_there": "There by",
        "calls_back": "back after",
        "calls_for": "For",
        "calls_releases": "Releases",
        "calls_waits": "Waits for it:",
        "calls_end": "the end of the job",
        "calls_none": "Nobody has to be called for this job.",
        "call_late": "Due before the plan starts on {day}. Call now, or start later.",
        "one_call_late": "1 call is due before the plan starts on",
        "many_calls_late": "{n} calls are due before the plan starts on",
        "calls_phone": "Into the phone",
        "calls_file": "Take the calendar file",
        "calls_way_1": (
            "On the phone that makes the calls, touch the button and open the file: its calendar asks to add the"
            " events."
        ),
        "calls_way_2": (
            "Pick or make a calendar for this job, and add all. Each call rings a quarter hour ahead; visits stand"
            " beside."
        ),
        "calls_way_3": (
            "When the plan has changed, take the file again into the same calendar: an event that has moved takes its"
            " new time. One that is gone from this page, strike out by hand."
        ),
        "calls_own": "Looks of the crew",
        "calls_own_lead": "Nobody from outside comes for these. Whoever does the work says when it is ready.",
        "calls_about": "about {time}",
        "calls_told": "to be told {notice} ahead",
        "call_event": "Call: {what}",
        "visit_inspection": "{what} comes",
        "visit_delivery": "{what} delivers",
        "visit_rental": "{what}, rented",
        "visit_friend": "{what} works",
        # counts
        "one_procedure": "1 procedure",
        "many_procedures": "{n} procedures",
        "one_calculator": "1 calculator",
        "many_calculators": "{n} calculators",
        "one_source": "1 published source",
        "many_sources": "{n} published sources",
        "one_tool": "1 tool",
        "many_tools": "{n} tools",
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
        "each_box": "In each box:",
        "calculator": "Calculator",
        "work_it_out": "Work it out for other figures",
        "given": "Given",
        "at_standards": "The rest, at our standards",
        "you_give_it": "you give it",
        "answer": "Answer",
        "caution": "Watch",
        "formula": "Formula",
        "takes": "What it takes",
        "gives": "What it gives",
        "input": "Input",
        "starts_at": "Starts at",
        "usual": "Usual",
        "limits": "Limits",
        "rounded": "Rounded",
        "as_table": "A table",
        "in_words": "In words",
        "yes_or_no": "Yes or no",
        "whole_number": "A whole number",
        "four_figures": "To four figures",
        "worked_example": "Worked example",
        "work_it_out_here": "Work it out",
        "cannot_decide": "What it does not decide",
        "used_in": "Used in",
        # the live forms
        "live_put_in": "Put in",
        "live_feet_inches": "ft in",
        "live_units": "Units",
        "live_us": "ft, in",
        "live_metric": "m, mm",
        "live_less": "{what}: less",
        "live_more": "{what}: more",
        "live_yes": "yes",
        "live_no": "no",
        "live_back": "Back to our standard",
        "live_empty": "Put in a figure.",
        "live_stale": "The last good answer. It is not for the figures above: one of them cannot be used.",
        "live_nothing": "–",
        "live_plan_like": "A line for each shape: front room: 14' x 12', and less 3' x 2' for what is left out.",
        "live_add_row": "Add one",
        "live_drop_row": "Take it out",
        "live_yours": "yours",
        "live_nearest": "nearest to yours",
        "live_start_over": "Start over",
        "live_copy_link": "Copy link with these figures",
        "live_copied": "The link is copied.",
        "live_not_copied": "This browser does not let a page copy: take the link from the address line.",
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
