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
        "search_title": "Search",
        "search_nothing": "Nothing found. Try fewer words, or another name for it.",
        "search_meant": 'Nothing found for that; this is for "{word}".',
        "search_shut": "Close",
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
        # jobs: the plan
        "plan_title": "Plan",
        "plan_lead": "Who does what where on each day, what is closed, and what sets the end date.",
        "plan_from": "Planned from",
        "plan_labour": "Labour",
        "plan_closed_days": "Days with a place closed",
        "plan_drawn": "Drawn to scale",
        "plan_how": (
            "Time runs to the right in working hours; nights and days off are left out. A row is a place. "
            "The same in words stands below, day by day."
        ),
        "plan_whole": "The whole job",
        "plan_week": "Week of {day}",
        "plan_alt": (
            "{what}, drawn: a row for each place, bars for work, closed and waiting times. Below it stands in words."
        ),
        "plan_key": "What the marks mean",
        "plan_key_work": "work, with the task and who",
        "plan_key_sets": "filled, and bold words: this work sets the end date",
        "plan_key_closed": "hatched from top to bottom: the place is closed to everybody",
        "plan_key_wait": "dashed: something settles, sets, dries or is called for; others may work beside it",
        "plan_key_visit": "eight-sided sign: somebody from outside comes to look",
        "plan_key_deadline": "double line: the evening of the deadline",
        "plan_bar": "{task}: {people}",
        "plan_bar_closed": "closed: {task}",
        "plan_bar_wait": "waits: {task}",
        "plan_bar_call": "called: {inspection}",
        "plan_days": "Day by day",
        "plan_nobody": "Nobody works on this day.",
        "plan_with": "with {people}",
        "plan_goes_on": "goes on another day",
        "plan_comes": "comes to look:",
        "plan_shut": "Closed:",
        "plan_shut_until": "until {until}, after {task}",
        "plan_sets": "Settles, sets or dries:",
        "plan_sets_until": "{task}, until {until}. Waiting for it: {later}.",
        "plan_called": "Called:",
        "plan_called_until": "{inspection}, comes {until} at the earliest.",
        "plan_sets_end": "sets the end",
        "plan_chain": "What sets the end date",
        "plan_chain_lead": (
            "Each of these waited for the one above it. Time that is won here is won for the job, and nowhere else."
        ),
        "why_start": "Starts with the job.",
        "why_not_before": "Not before this day: the job file says so.",
        "why_delivery": "Its material is not there sooner.",
        "why_notice": "The visit cannot be had sooner: it wants its notice.",
        "why_away": "Its people are not there sooner.",
        "why_free": "It could start sooner, and the job would end no sooner.",
        "why_task": "Follows {other}.",
        "why_visit": "Goes on when {what} has passed.",
        "why_wait": "{other} settles, sets or dries until {until}.",
        "why_call": "Called for when {other} is ready for it.",
        "why_person": "{what} is busy until then: {other}.",
        "why_place": "{what} is taken until then: {other}.",
        "why_closed": "{what} is closed until {until}, after {other}.",
        "why_people_back": "Its people are there for it from {time}.",
        "why_office": "Visits are made on working days, in office hours.",
        "why_spare": "It could start {time} sooner and would gain nothing.",
        "plan_slack": "Time in hand",
        "plan_slack_lead": (
            "How much later a task may start before the end date moves, if all "
            "others keep their people and their order. "
            "Working time; it is there once, and whoever uses it takes it from those that follow."
        ),
        "plan_task": "Task",
        "plan_where": "Where",
        "plan_when": "When",
        "plan_in_hand": "In hand",
        "slack_sets": "none: it sets the end date",
        "slack_none": "none",
        "slack_done": "done {day}",
        "plan_sure": "How sure this is",
        "plan_sure_lead": (
            "A solver looks for the best plan in this order: each aim holds what the one before it has reached."
        ),
        "sure_end": "Soonest end",
        "sure_closed": "Then the fewest closed hours, all places added up",
        "sure_moves": "Then the fewest changes of place",
        "sure_end_proved": "Proved: no plan that keeps the rules ends sooner.",
        "sure_closed_proved": "Proved: no plan that ends then closes less.",
        "sure_moves_proved": "Proved: no plan with that end and those closed hours changes less.",
        "sure_not": "Not proved: {least} is not ruled out, a gap of {gap}.",
        "sure_counted": "Counted, not sought: this job is too large for it.",
        "sure_seconds": "{n} s of search.",
        "sure_none": "Nothing is closed in this job.",
        "time_hours": "{n} h",
        "time_minutes": "{n} min",
        "one_day": "1 day",
        "many_days": "{n} days",
        "day_monday": "Monday",
        "day_tuesday": "Tuesday",
        "day_wednesday": "Wednesday",
        "day_thursday": "Thursday",
        "day_friday": "Friday",
        "day_saturday": "Saturday",
        "day_sunday": "Sunday",
        # jobs: what if
        "what_if_title": "What if",
        "what_if_lead": "The same job done another way. Each is planned as the job itself is.",
        "what_if_compared": "Side by side",
        "what_if_variant": "Variant",
        "what_if_as_planned": "As planned",
        "what_if_end": "Ends",
        "what_if_spare": "Against the deadline",
        "what_if_closed": "Days with a place closed",
        "what_if_closed_hours": "Closed hours, all places",
        "what_if_labour": "Labour",
        "what_if_cost": "Cost",
        "what_if_alt": (
            "Each variant as a bar from its start to its end, with the days on which a "
            "place is closed hatched. The table says the same."
        ),
        "what_if_each": "Each of them",
        "what_if_changes": "What it changes",
        "what_if_comes": "What comes of it",
        "what_if_after": "comes after {others}",
        "what_if_after_nothing": "comes after nothing beyond what the book asks",
        "what_if_people": "is done by {n}",
        "what_if_not_before": "starts no sooner than {day}",
        "what_if_more": "{person} works on it too, {days}",
        "what_if_without": "without {person}",
        "what_if_days": "work on {days} too",
        "what_if_impossible": "Cannot be planned: {why}.",
        "what_if_same_end": "It ends on the same day.",
        "what_if_sooner": "It ends {time} sooner.",
        "what_if_later": "It ends {time} later.",
        "what_if_more_closed": "A place is closed on {n} more.",
        "what_if_fewer_closed": "A place is closed on {n} fewer.",
        "what_if_proved": "Proved: it cannot end sooner that way.",
        "what_if_unproved": "Not proved: it may end sooner that way.",
        "what_if_drawn": "A bar is a plan from start to end. Hatched: a place is closed. Double line: the deadline.",
        "what_if_no_plan": "cannot be planned",
        "what_if_none": (
            "The job file names no variants. Under 'variants' it can: another order, more people, more days."
        ),
        "what_if_late": "The job is late. Each of these was tried by planning it.",
        "what_if_in_time": "The job is in time, so nothing was tried to bring it in.",
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
        # jobs: sheets
        "sheets_title": "Sheets for each day",
        "sheets_lead": (
            "For each person and day a sheet to take along: the tasks, the steps to tick, and the numbers of this job."
        ),
        "sheets_how": "To print one day, pick it and print. To print all days, open the page without picking one.",
        "sheets_all": "All days",
        "sheets_of": "Sheets of {name}",
        "sheets_no_codes": (
            "The sheets carry no code for the phone, since this site has no address yet. Write it into mkdocs.yml as"
            " site_url (https://...), and each method gets a code that opens its page."
        ),
        "sheet_with": "with",
        "sheet_before": "goes on from an earlier day: tick on",
        "sheet_after": "goes on on a later day",
        "sheet_measure": "measure, and work it out on the page.",
        "sheet_example": "the job gives no size: the book's example",
        "sheet_code": "Code that opens the page: {title}",
        "one_row_more": "1 row more on the page",
        "many_rows_more": "{n} rows more on the page",
        # on site: the book kept on a device, the look for the sun
        "sun_switch": "In the sun: high contrast",
        "sun_forgotten": "In the sun: this browser does not let a page remember it, so it holds for this page",
        "kept_has": "This phone has the book of {date}.",
        "kept_keep": "Keep the book on this phone ({of} MB)",
        "kept_coming": "The book is coming onto this phone, to work without signal: {got} of {of} MB.",
        "kept_coming_newer": "A newer one is coming: {got} of {of} MB.",
        "kept_newer": "A newer book is here. What you ticked and wrote stays.",
        "kept_take": "Change to the book of {date}",
        "kept_failed_signal": "The book did not come whole. It goes on by itself when there is signal.",
        "kept_failed_differs": (
            "What came is not what was published, so it was not taken. It is tried again with the next page."
        ),
        "kept_failed_room": "This phone has no room for the book ({of} MB). Make room, then open this page again.",
        "kept_preview": "This is a preview: no book is kept on this device.",
        "kept_folder": "Opened from a folder: the whole book lies in it, and needs no signal.",
        "kept_unsafe": (
            "This address is not a secure one (https), so this browser does not keep the book for work without signal."
        ),
        "kept_cannot": "This browser cannot keep the book for work without signal.",
        "kept_refused": "This browser refuses to keep the book: in a private window, or by its settings.",
        "absent_title": "Not on this phone",
        "absent": "There is no signal, and this page is not in the book that this phone has.",
        # labels to print
        "labels_title": "Labels to print",
        "labels_lead": (
            "A code on the thing itself: point a phone at it, and its page opens, also without signal once the phone"
            " has the book."
        ),
        "labels_way_1": (
            "Untick what you do not need, then print on letter paper at full size (100 %), plain or with glue on the"
            " back."
        ),
        "labels_way_2": "Cut along the dashed lines. Keep the white margin round the code: a camera needs it.",
        "labels_way_3": (
            "Stick each in its place, dry and clean, where a phone can be held a foot away. Clear tape over it keeps it"
            " readable."
        ),
        "labels_no_address": "This site has no address yet",
        "labels_write": (
            "A code holds the full address of a page. Write the one at which the book is published into mkdocs.yml:"
        ),
        "labels_then": (
            "Then build again, and the labels of the procedures and of the jobs stand here. One would look like this:"
        ),
        "labels_sample": "How a label looks",
        "labels_sample_over": "sample",
        "labels_code": "Code that opens: {title}",
        "labels_job": "Job",
        "labels_job_box": "in the lid of the job box",
        "labels_space_place": "beside the door of the space",
        "labels_stick": "Stick it",
        "labels_print": "Print",
        "labels_more": (
            "Another procedure gets a label when its file says where it is stuck: label: inside the panel door."
        ),
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
