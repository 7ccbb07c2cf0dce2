"""The live forms in a real browser: typing, refusals, standards, rows, tables, drawings, keyboard, no script."""

from __future__ import annotations

from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys

from build_tools.commands.site import BOOK
from tests.browser.live_form import PAGE, RING, LiveForm
from tests.browser.window import Window
from tests.tables import answer


def ring_for(rise: str, **more: str) -> str:
    """What the calculator says, at the crew's standards."""
    return str(answer("wax-ring", {"rise": rise, **more}, BOOK)["ring_to_use"])


def test_a_rise_gives_its_ring(ring: LiveForm) -> None:
    """The rise typed into the form of the step gives the ring, the gap and what to watch."""
    assert ring.says("ring_to_use") == ring_for("1/4 in flange above floor") == "1 in ring"
    ring.type("rise", "1/2 floor above flange")
    assert ring.says("ring_to_use") == ring_for("1/2 in floor above flange") == "1-1/2 in ring"
    assert ring.says("gap") == "1-1/8 in"
    assert any("Lower the bowl slowly" in line for line in ring.read()["cautions"])
    assert any("5/8 in + 1/2 in = 1-1/8 in" in line for line in ring.read()["working"])
    assert ring.window.console() == []


def test_a_figure_may_be_written_in_many_ways(ring: LiveForm) -> None:
    """Fractions, decimals, metric figures and typographic signs mean the same half inch."""
    ways = ["1/2", "0.5", ".5", "½", "1/2 in", '1/2"', "½”", "1⁄2 ″", "0' 1/2\"", "12.7 mm", "1.27 cm", "0.0127 m"]
    read = {}
    for text in ways:
        ring.type("rise", "1 floor above flange")
        ring.type("rise", text)
        read[text] = ring.says("gap"), ring.read()["wrong"]
    assert read == dict.fromkeys(ways, ("1-1/8 in", []))


def test_feet_and_inches_are_read(window: Window) -> None:
    """A width in feet and inches with typographic marks; what was read is said beside the box."""
    window.open("concrete/approach-forming.html")
    form = LiveForm(window, "#order")
    form.type("throat", "16′ 6½″")
    assert form.says("order") == answer("approach-concrete", {"throat": "16' 6-1/2\"", "depth": "6'"}, BOOK)["order"]
    assert form.field("throat").find_element("css selector", ".reads").text == "= 16' 6-1/2\""
    form.type("throat", "5000 mm")
    assert form.field("throat").find_element("css selector", ".reads").text == "≈ 16' 4-7/8\""


def test_beyond_a_limit_the_last_answer_is_struck_out(ring: LiveForm) -> None:
    """Beyond a limit the message stands at the field, the last answer stays struck out, and what was typed stays."""
    ring.type("rise", "1/2 floor above flange")
    good = ring.read()["answer"]
    ring.type("rise", "9 floor above flange")
    wrong = ring.window.until(lambda: ring.read()["wrong"], "the message")
    assert wrong == [
        "Finished floor and top of the flange: 9 in floor above flange is more than the 4 in floor above flange that "
        "this answers for"
    ]
    said = ring.read()
    assert (said["stale"], said["answer"]) == (True, good)
    box = ring.box("rise")
    assert box.get_attribute("value") == "9"
    assert box.get_attribute("aria-invalid") == "true"
    message = ring.window.find(f"#{(box.get_attribute('aria-describedby') or '').split()[0]}")
    assert message.text == wrong[0]
    line = "return getComputedStyle(arguments[0].querySelector('.answer dd')).textDecorationLine"
    assert ring.window.script(line, ring.root) == "line-through"
    assert "last good answer" in ring.root.find_element("css selector", ".stale-says").text
    ring.type("rise", "3/4 floor above flange")
    assert (ring.read()["stale"], ring.read()["wrong"]) == (False, [])
    assert ring.window.script(line, ring.root) == "none"


def test_what_cannot_be_read_is_said(ring: LiveForm) -> None:
    """What is no length gets a plain message beside the field, spoken once somebody is done with it."""
    message = ring.field("rise").find_element("css selector", ".wrong")
    said = {"3 lb": "a mass", "half": "is not a length", "1,5": "comma", "": "is empty: put in a figure"}
    for text, words in said.items():
        ring.type("rise", text)
        ring.box("rise").send_keys(Keys.TAB)
        assert words in message.text
        assert message.get_attribute("role") == "alert"
        assert ring.read()["stale"]


def test_the_standard_by_name_and_the_way_back(ring: LiveForm) -> None:
    """A field at the crew's standard names it; once changed, a button leads back."""
    field = ring.field("recess")
    back = field.find_element("css selector", ".back-to")
    assert field.find_element("css selector", ".ours-is a").text == "Recess under our bowl"
    assert not back.is_displayed()
    before = ring.read()["answer"]
    ring.type("recess", "1")
    assert back.is_displayed() and ring.read()["answer"] != before
    back.click()
    assert (ring.read()["answer"], ring.box("recess").get_attribute("value")) == (before, "5/8")
    assert not back.is_displayed()


def test_start_over(ring: LiveForm) -> None:
    """One button puts every field back to where the page starts it."""
    before = ring.read()["answer"]
    ring.type("rise", "1 floor above flange")
    ring.type("recess", "7/8")
    ring.press("Start over")
    assert ring.read()["answer"] == before


def test_buttons_step_by_a_sixteenth(ring: LiveForm) -> None:
    """The buttons beside a length go to the next mark of the tape, and stop at the limit."""
    ring.type("rise", "0.3 floor above flange")
    ring.press("Finished floor and top of the flange: more")
    assert ring.box("rise").get_attribute("value") == "5/16"
    ring.press("Finished floor and top of the flange: less")
    assert ring.box("rise").get_attribute("value") == "1/4"
    ring.type("rise", "4 floor above flange")
    ring.press("Finished floor and top of the flange: more")
    assert ring.box("rise").get_attribute("value") == "4"


def test_the_table_marks_the_nearest_row_and_column(ring: LiveForm) -> None:
    """The row and the column of the step's table that are nearest to what was typed are marked, in words as well."""
    marked = """
        const table = document.querySelector('#choose-ring table.sums[data-down]');
        const own = one => one && one.firstChild.textContent.trim();
        return [own(table.querySelector('tr.yours > th')), own(table.querySelector('thead th.yours')),
                [...table.querySelectorAll('.nearest')].map(one => one.textContent)]
    """
    assert ring.window.script(marked) == [None, None, []]
    ring.type("rise", "0.55 floor above flange")
    ring.type("ring", "1-1/2")
    expected = ["1/2 in floor above flange", "1-1/2 in", ["yours", "nearest to yours"]]
    ring.window.until(lambda: ring.window.script(marked) == expected, "the marks")
    ring.type("rise", "9 floor above flange")
    ring.window.until(lambda: ring.window.script(marked) == [None, None, []], "no marks")


def test_a_new_figure_asks_for_its_way(ring: LiveForm) -> None:
    """The way of the example is not that of what somebody measured: until it is picked, there is no answer."""
    picked = "return [...arguments[0].querySelectorAll('[data-input=rise] :checked')].map(one => one.value)"
    assert ring.window.script(picked, ring.root) == ["flange above floor"]
    ring.type("rise", "5/8")
    wrong = ring.window.until(lambda: ring.read()["wrong"], "the message")
    assert "write '5/8 in floor above flange' or '5/8 in flange above floor'" in wrong[0]
    assert (ring.read()["stale"], ring.window.script(picked, ring.root)) == (True, [])
    ring.type("rise", "5/8 floor above flange")
    assert (ring.says("ring_to_use"), ring.read()["wrong"]) == ("1-1/2 in ring", [])
    ring.type("rise", "1/2")
    assert (ring.says("gap"), ring.read()["wrong"]) == ("1-1/8 in", [])
    ring.press("Start over")
    assert ring.says("gap") == "3/8 in"


def test_the_drawing_follows(ring: LiveForm) -> None:
    """The drawing beside the form is drawn anew with the figures typed."""
    ring.type("rise", "1/2 floor above flange")
    words = "return document.querySelector('#choose-ring [data-drawing]').textContent"
    ring.window.until(lambda: "gap 1-1/8 in" in ring.window.script(words), "the new drawing")
    ids = "return [...document.querySelectorAll('[id]')].map(one => one.id)"
    found = ring.window.script(ids)
    assert len(found) == len(set(found))


def test_forms_of_one_calculator_follow_one_another(window: Window) -> None:
    """A figure asked for at several steps of a page is typed once."""
    window.open("concrete/approach-forming.html")
    form, other = LiveForm(window, "#lay-out"), LiveForm(window, "#order")
    form.type("throat", "18'")
    wanted = answer("approach-concrete", {"throat": "18'", "depth": "6'"}, BOOK)["order"]
    window.until(lambda: other.says("order") == wanted, "the other form")
    helps = [one.field("grade_break").find_element("css selector", ".help").text for one in (form, other)]
    assert helps[0] == helps[1] != "", "the page brings it with the first form alone"


def test_rows_are_put_in_block_by_block(window: Window) -> None:
    """An opening that is added to the lock schedule is counted, and one that is taken out is not."""
    window.open("doors/lockset-install.html")
    form = LiveForm(window, "#schedule")
    before = int(form.says("privacy").split()[0])
    form.press("Add one")
    row = form.root.find_elements("css selector", ".row-in")[-1]
    row.find_element("css selector", "input").send_keys("Guest, bath")
    row.find_element("css selector", "select").send_keys("Bathroom")
    assert int(form.says("privacy").split()[0]) == before + 1
    link = window.until(lambda: "Guest" in (url := window.driver.current_url) and url, "the address")
    window.open("about:blank")
    window.open(link)
    form = LiveForm(window, "#schedule")
    assert int(form.says("privacy").split()[0]) == before + 1
    form.press("Take it out", form.root.find_elements("css selector", ".row-in")[-1])
    assert int(form.says("privacy").split()[0]) == before


def test_a_plan_is_typed_in_lines(window: Window) -> None:
    """Rooms, a line for each, give the area of the floor."""
    window.open("flooring/flooring-receiving.html")
    form = LiveForm(window, "#order")
    form.type("rooms", "den: 10' x 10'\nless 2' x 5'")
    wanted = answer("strip-floor-take-off", {"rooms": "den: 10' x 10'; less 2' x 5'"}, BOOK)
    assert (form.says("net_area"), form.says("bundles")) == (wanted["net_area"], wanted["bundles"])


def test_a_list_that_may_be_left_out_is_left_empty(window: Window) -> None:
    """No rooms, but an area already measured: the form answers for it."""
    window.open("flooring/flooring-receiving.html")
    form = LiveForm(window, "#order")
    form.type("measured_area", "200")
    form.type("rooms", "")
    wanted = answer("strip-floor-take-off", {"measured_area": "200 sq ft"}, BOOK)
    assert (form.says("net_area"), form.says("bundles")) == (wanted["net_area"], wanted["bundles"])


def test_the_keyboard_is_enough(ring: LiveForm) -> None:
    """By keys alone: step a length with the arrows, unfold the rest with Enter, choose with the arrows."""

    def keys(*pressed: str) -> str:
        ActionChains(ring.window.driver).send_keys(*pressed).perform()
        return str(ring.window.script("return document.activeElement.textContent.trim()"))

    rise = ring.window.find(f"{RING} [data-input=rise] .puts-in input")
    ring.window.script("arguments[0].focus()", rise)
    keys(Keys.ARROW_UP, Keys.ARROW_UP)
    assert rise.get_attribute("value") == "3/8"
    back = ActionChains(ring.window.driver).key_down(Keys.SHIFT).send_keys(Keys.TAB, Keys.TAB).key_up(Keys.SHIFT)
    back.perform()
    keys(Keys.SPACE)
    assert ring.says("gap") == "1/4 in"
    reached = next((True for _ in range(12) if keys(Keys.TAB).startswith("The rest")), False)
    assert reached
    keys(Keys.ENTER)
    ring.window.until(lambda: ring.window.find_all(f"{RING} [data-input=rise_from] input"), "the folded fields")
    keys(Keys.TAB, Keys.ARROW_DOWN)
    assert ring.says("gap") == "1-1/8 in"
    outline = "const s = getComputedStyle(document.activeElement.nextSibling); return s.outlineStyle"
    assert ring.window.script(outline) == "solid"


def test_without_script_the_worked_example_stands(window: Window) -> None:
    """With script switched off the page shows the example worked out by the build, and no control that does nothing."""
    window.driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        window.driver.get(window.address + PAGE)
        text = window.find(f"{RING} .worked-form").text
        assert "1 in ring" in text and "Recess under the bowl" in text
        assert window.find_all(".worked-form :is(input, button, textarea, select)") == []
        assert window.find(f"{RING} [data-drawing] svg").is_displayed()
    finally:
        window.driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})
