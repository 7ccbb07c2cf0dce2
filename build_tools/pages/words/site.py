"""The fixed words of the home page, the menu, the whole fit-out, the labels, and of the book kept on a device."""

from __future__ import annotations

SITE = {
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
    "is_owner": "the owner",
    "is_lead": "a lead",
    "is_helper": "a helper",
    "is_friend": "a specialist friend",
    "ask_ahead": "Ask ahead:",
    # the whole fit-out
    "fit_out": "The fit-out",
    "sequence_title": "Sequence of work",
    "sequence_lead": (
        "From the first stake to the keys: what comes after what, by trade, and where somebody must look."
    ),
    "sequence_drawn": "Drawn",
    "sequence_how": (
        "Time runs down. A line leads from a job to what can begin after it. The eight-sided sign marks a job"
        " with a hold point. A job that a dwelling does not have is passed over."
    ),
    "sequence_alt": (
        "{n} procedures in a lane for each trade, joined by lines from what comes before to what comes after."
        " The list below says the same in words."
    ),
    "sequence_listed": "In words",
    "sequence_after": "After:",
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
        "they decide. What is said of first aid is from memory and replaces no course. Emergency: 911."
    ),
    "protects_list": "What protects",
    "afterwards": "When it has happened",
    "met_at": "Where the book warns of it",
    # on site: the book kept on a device, the look for the sun
    "sun_switch": "In the sun: high contrast",
    "sun_forgotten": "In the sun: this browser does not let a page remember it, so it holds for this page",
    "kept_has": "This device has the book of {date}.",
    "kept_keep": "Keep the book on this device ({of} MB)",
    "kept_coming": "The book is coming onto this device, to work without signal: {got} of {of} MB.",
    "kept_coming_newer": "A newer one is coming: {got} of {of} MB.",
    "kept_newer": "A newer book is here. What you ticked and wrote stays.",
    "kept_take": "Change to the book of {date}",
    "kept_failed_signal": "The book did not come whole. It goes on by itself when there is signal.",
    "kept_failed_differs": (
        "What came is not what was published, so it was not taken. It is tried again with the next page."
    ),
    "kept_failed_room": "This device has no room for the book ({of} MB). Make room, then open this page again.",
    "kept_preview": "This is a preview: no book is kept on this device.",
    "kept_folder": "Opened from a folder: the whole book lies in it, and needs no signal.",
    "kept_unsafe": (
        "This address is not a secure one (https), so this browser does not keep the book for work without signal."
    ),
    "kept_cannot": "This browser cannot keep the book for work without signal.",
    "kept_refused": "This browser refuses to keep the book: in a private window, or by its settings.",
    "absent_title": "Not on this device",
    "absent": "There is no signal, and this page is not in the book that this device has.",
    # one procedure in a file
    "packed": "One procedure from {name}, put into this file on {date}. The book may say something newer.",
    "packed_newer": "Open it in the book",
    # labels to print
    "labels_title": "Labels to print",
    "labels_lead": (
        "A code on the thing itself: point a phone at it, and its page opens, also without signal once the phone"
        " has the book."
    ),
    "labels_way_1": (
        "Untick what you do not need, then print on letter paper at full size (100 %), plain or with glue on the back."
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
}
