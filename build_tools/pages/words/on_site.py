"""The fixed words of the work on site: the ticks, the readings, the walk and the record. A script's are ``do_...``."""

from __future__ import annotations

ON_SITE = {
    "walk_open": "Step through",
    "records_title": "Records",
    "records_lead": "What was ticked and read on site, job by job: what is done, by whom, what needs a look.",
    "records_here": "On this device",
    "records_here_how": (
        "What was entered here, procedure by procedure. Take a job out as one file and hand it over. It stays here"
        " as well."
    ),
    "records_how": (
        "Choose files that were taken out on other devices, as many as you like, or drag them onto this page. They"
        " are read in this browser and go nowhere."
    ),
    "records_files": "Files from site",
    "records_choose": "Choose record files",
    "records_folder": "A whole folder at once, in a terminal:",
    "records_no_script": "Reading them takes script, and this browser does not run it.",
    "records_schema": "How such a file is made up",
    # the page of a procedure
    "do_done": "Done",
    "do_note": "Note",
    "do_reading": "Reading",
    "do_pass": "Pass",
    "do_outside": "Outside.",
    "do_outside_by": "Outside by {by}.",
    "do_too_little": "Outside by {by}, too little.",
    "do_too_much": "Outside by {by}, too much.",
    "do_never": "Outside: never {way}.",
    "do_which_way": "Say which way: {ways}.",
    "do_no_minus": "This reading has no minus. Write its size alone.",
    "do_unread": "Kept as it stands. It was not read as a figure.",
    "do_no_script": "This needs a script that did not come. Try again when there is signal.",
    "do_changed": "This step changed since you ticked it (revision {n}, {when}). Read it again.",
    "do_tick_again": "Still done: tick it for revision {n}",
    "do_looked": "Who looked",
    "do_when": "When",
    "do_has_passed": "It passed",
    "do_looked_at": "{who} looked, {when}, and it passed.",
    "do_take_back": "Take it back",
    "do_pick_who": "Choose who looked",
    "do_somebody_else": "Somebody else",
    "do_full_name": "First and last name",
    "do_not_theirs": "Who looks at this point: {look}. {who} is {role}. Record it anyway?",
    "do_no_role": "not on the list of the crew",
    "do_anyway": "Record it anyway",
    "do_not_the": "not {the}",
    "do_not_known": "not known as {the}",
    "do_say_who": "Say who looked.",
    "do_say_name": "Write the first and the last name of who looked.",
    "do_stops_before": "Work stops before this step: '{hold}' is open. Who has to look: {who}.",
    "do_to_hold": "Go to the hold point",
    "do_tick_past": "Done without the look",
    "do_say_when": "Say when it was.",
    "do_not_yet": "That time is still to come.",
    "do_no_job": "No job chosen",
    "do_no_space": "No space",
    "do_job": "Job",
    "do_space": "Space",
    "do_who": "Who does the work",
    "do_take_place": "Use these",
    "do_place_why": "Ticks and readings are kept apart for each job and space. They stay on this device.",
    "do_place": "Job, space, who",
    "do_record": "The record",
    "do_walk": "Step through",
    "do_units": "Units of the readings",
    "do_us": "ft, in",
    "do_metric": "m, mm",
    "do_ticked": "{n} of {of} steps done",
    "do_checks_open": "checks at the end open",
    "do_one_moved": "1 entry that was made before a job was chosen now stands in {place}.",
    "do_many_moved": "{n} entries that were made before a job was chosen now stand in {place}.",
    "do_move_back": "Not of this job: move back",
    "do_one_before": (
        "1 entry was made here before {place} was chosen. Move it there? Where both have one, the later stays."
    ),
    "do_many_before": (
        "{n} entries were made here before {place} was chosen. Move them there? Where both have one, the later stays."
    ),
    "do_move_here": "Move",
    "do_leave_there": "Leave",
    "do_one_outside": "1 reading outside",
    "do_many_outside": "{n} readings outside",
    "do_one_open": "1 hold point open",
    "do_many_open": "{n} hold points open",
    "do_full": (
        "This device has no room left: what you put in now is not kept. It is here until you close this page."
        " Take the record out, or make room and go on."
    ),
    "do_refused": (
        "This browser refuses to keep anything (a private window, or its settings). What you put in is here until"
        " you close this page. Take the record out before."
    ),
    "do_absent": (
        "This browser has no store for a page. What you put in is here until you close this page. Take the record"
        " out before."
    ),
    "do_take_out": "Take the record out",
    "do_taken_out": "{name} is in your downloads. Hand it over as you like: nothing was sent.",
    "do_print": "Print the record",
    "do_put_in": "Put in a record from a file",
    "do_put_in_done": "{n} entries of '{title}' put in: {place}. Where both have one, the later stays.",
    "do_no_record": "{name} is no record of this book, or it is broken. Nothing was taken from it.",
    "do_one_ahead": (
        "{name} has an entry whose time is still to come: {day}. It would count over whatever is entered until"
        " then, so it was left out. Was a clock wrong?"
    ),
    "do_many_ahead": (
        "{name} has {n} entries whose time is still to come, as late as {day}. They would count over whatever is"
        " entered until then, so they were left out. Was a clock wrong?"
    ),
    "do_take_ahead": "Take in what is ahead",
    "do_go_there": "Go there",
    "do_afresh": "Start afresh",
    "do_afresh_sure": "Yes, empty {n} entries",
    "do_afresh_why": (
        "For work that comes again. Ticks, readings and notes of this place are emptied: take the record out first."
    ),
    "do_afresh_done": "Nothing is ticked here.",
    "do_stays": "Nothing leaves this device by itself. ",
    "do_all_records": "All records on this device",
    "do_step": "Step",
    "do_what": "What",
    "do_limits": "Limits",
    "do_entry": "Entry",
    "do_state": "State",
    "do_by": "By, when",
    "do_revision": "Revision {n}",
    "do_sign_here": "Signed",
    "do_state_open": "open",
    "do_state_done": "✓ done",
    "do_state_changed_since": "✓ done, the step changed since",
    "do_state_pass": "✓ pass",
    "do_state_outside": "✗ outside",
    "do_state_unread": "not judged",
    "do_state_missing": "no reading",
    "do_state_passed": "✓ passed",
    "do_state_passed_by_another": "✓ passed, looked at by somebody else",
    # the walk
    "do_leave": "Full page",
    "do_back_one": "Back",
    "do_next": "Next",
    "do_finish": "Finish",
    "do_have_read": "I have read it",
    "do_step_of": "Step {n} of {of}",
    "do_before_step": "Before step {n} of {of}",
    "do_held": "Work stops here. Say who looked and when, and press 'It passed'.",
    "do_may_sleep": "The screen may go dark: this browser does not let a page keep it on.",
    # the page of records
    "do_read": "{n} records read.",
    "do_nothing_here": "Nothing was entered on this device yet.",
    "do_nothing_kept": "This browser keeps nothing, or refuses to show it to this page.",
    "do_take_job_out": "Take this job out",
    "do_take_all_out": "Take everything out",
    "do_csv": "Take out as a table (CSV)",
    "do_procedure": "Procedure",
    "do_outside_n": "Outside",
    "do_holds_n": "Holds open",
    "do_n_of": "{n} of {of}",
    "do_outside_list": "Readings outside",
    "do_outside_line": "{what}: {entry}. Asked for: {limits}. {by}",
    "do_holds_list": "Hold points open",
    "do_holds_line": "after step {n}: {what}",
    "do_others_list": "Hold points that somebody else looked at",
    "do_others_line": "after step {n}: {what}. Looked: {entry}",
    "do_changed_list": "Ticked before the step changed",
    "do_changed_line": "step {n}: {title}",
    "do_nobody": "No name given.",
    # the load-out
    "do_load_stays": "Ticks are kept on this device, each under its day. They do not show on another device.",
    "do_load_far": "{n} of {of} on the truck",
    "do_load_all": "✓ All {of} on the truck",
    "do_load_comes": "{n} of {of} deliveries taken",
    "do_load_one_changed": "1 amount changed",
    "do_load_many_changed": "{n} amounts changed",
    "do_load_not_kept": "not kept",
    "do_load_was": "was {was}, now {now}: tick it when it is right",
    "do_load_last": "Last tick {when}.",
    "do_load_afresh": "Start this day afresh",
    "do_load_one_sure": "Clear the 1 tick of {day}?",
    "do_load_many_sure": "Clear all {n} ticks of {day}?",
    "do_load_leave": "Leave them",
    "do_load_clear": "Clear them",
    "do_load_full": (
        "This device has no room left: what you tick now is not kept. It is here until you close or reload this"
        " page. Print the page, or make room and tick again."
    ),
    "do_load_refused": (
        "This browser refuses to keep anything (a private window, or its settings). What you tick is here until"
        " you close or reload this page. Print it, or open it in an ordinary window."
    ),
}
