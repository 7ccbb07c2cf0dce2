"""Drawings that the owner brings: what only draws is taken, everything else is refused by its line."""

from __future__ import annotations

import pytest

from build_tools.book.svg import MOST, Drawing

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 32 20">'


def wrong(inside: str, before: str = "", opens: str = OPEN) -> list[str]:
    """What is said of a drawing with that in it."""
    return [message for _, _, message in Drawing(f"{before}{opens}\n{inside}</svg>".encode()).wrong]


@pytest.mark.parametrize(
    "inside",
    [
        '<path d="M0 0h9v9z" fill="none" stroke="#14201a" stroke-width=".5" transform="rotate(45 3 3)"/>',
        '<defs><pattern id="p" width="2" height="2"><path d="M0 0h1"/></pattern></defs><rect fill="url(#p)"/>',
        '<g id="g"/><use href="#g"/><use xlink:href="#g" x="3"/><rect style="fill: url(\'#p\')"/>',
        "<style>text { font-family: Arial, sans-serif; fill: url( #p ) }</style><text x='1'>5/8 &lt; 1 &amp; 3</text>",
        "<title>On the flange</title><desc>How high</desc><metadata><x xmlns='urn:x' href='#a'/></metadata>",
        '<view xmlns="http://sodipodi.example/x" xmlns:i="urn:i" i:onward="C:\\drawings" i:label="url(x)"/>',
        '<image href="data:image/png;base64,iVBORw0KGgo=" width="3" height="3"/>',
    ],
)
def test_what_draws_is_taken(inside: str) -> None:
    """Shapes, text, styles, references within the file, and the marks of a drawing program."""
    prolog = '<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "x.dtd">\n'
    assert wrong(inside, prolog) == []
    assert Drawing(f"{OPEN}{inside}</svg>".encode("utf-16")).wrong == []


ELEMENTS = (
    "script foreignObject a animate set animateTransform animateMotion handler listener iframe audio video embed "
    "object link meta base html:script html:iframe html:div m:math m:mtext cursor feImage font-face-uri Script SCRIPT"
)


@pytest.mark.parametrize("name", ELEMENTS.split())
def test_an_element_that_does_more_is_refused(name: str) -> None:
    """By its name, wherever it stands."""
    opens = OPEN.replace(
        ">", ' xmlns:html="http://www.w3.org/1999/xhtml" xmlns:m="http://www.w3.org/1998/Math/MathML">'
    )
    assert wrong(f"<g><{name}/></g>", opens=opens) == [f"<{name.rpartition(':')[2]}> is nothing that draws"]


@pytest.mark.parametrize(
    "attribute",
    [
        'onload="run()"',
        'ONCLICK="run()"',
        "onbegin='run()'",
        'href="https://example.org/a.png"',
        'href="javascript:run()"',
        'href=" #a"',
        'xlink:href="other.svg#a"',
        'xlink:href="data:image/svg+xml;base64,PHN2Zz4="',
        'href="data:text/html,x"',
        'src="//example.org/x"',
        'fill="url(https://example.org/a.svg#p)"',
        'fill="url( &quot;other.svg#p&quot; )"',
        'style="background: URL(//example.org)"',
        'style="fill: u\\72l(//example.org)"',
        "style=\"filter: image-set('a.png' 1x)\"",
        'fill="&#117;rl(x)"',
        'mask="url(x.svg#m)"',
    ],
)
def test_an_attribute_that_does_more_is_refused(attribute: str) -> None:
    """Events, and addresses outside of the file, however they are written."""
    (message,) = wrong(f"<image {attribute}/>")
    assert message.startswith(f"'{attribute.partition('=')[0].rpartition(':')[2]}' of <image> ")


@pytest.mark.parametrize(
    "style",
    [
        "@import 'https://example.org/a.css';",
        "@im<!-- -->port 'a.css';",
        "@im<![CDATA[port]]> 'a.css';",
        "rect { fill: url(https://example.org) }",
        "rect { fill: u&#114;l(x) }",
        "@\\69mport 'a.css';",
    ],
)
def test_styles_fetch_nothing(style: str) -> None:
    """Also where a comment or a character reference stands in the middle of a word."""
    assert wrong(f"<style>{style}</style>") == ["its styles lead out of the file, which holds all that it needs"]


@pytest.mark.parametrize(
    ("before", "inside", "message"),
    [
        ('<!DOCTYPE svg [<!ENTITY a "b">]>', "<text>&a;</text>", "an <!ENTITY> is more than a drawing needs"),
        ('<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>', "", "an <!ENTITY> is more than a drawing needs"),
        ('<!DOCTYPE svg [<!ATTLIST g onload CDATA "run()">]>', "<g/>", "'onload' of <g> runs script"),
        ('<?xml-stylesheet href="a.css"?>', "", "<?xml-stylesheet?> is more than a drawing needs"),
        ('<?xml version="1.0" encoding="cp037"?>', "", "it is written in 'cp037': save it as UTF-8"),
        ("", "<g>", "no SVG that can be read: mismatched tag"),
        ("", "<text>&nbsp;</text>", "no SVG that can be read: undefined entity"),
        ("", "<svg:g/>", "no SVG that can be read: unbound prefix"),
    ],
)
def test_what_else_is_refused(before: str, inside: str, message: str) -> None:
    """Entities, instructions, encodings that readers read differently, and what is no XML."""
    assert message in wrong(inside, before)


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "no SVG that can be read: no element found"),
        (b"\x00\xff\xfe", "no SVG that can be read: syntax error"),
        (
            b'<html viewBox="0 0 9 9"/>',
            'no drawing: its outermost element is not <svg xmlns="http://www.w3.org/2000/svg">',
        ),
        (
            b'<svg viewBox="0 0 9 9"/>',
            'no drawing: its outermost element is not <svg xmlns="http://www.w3.org/2000/svg">',
        ),
        (
            b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 nine 9"/>',
            "its <svg> has no viewBox of four figures, which says how large it is",
        ),
    ],
)
def test_what_is_no_drawing(content: bytes, message: str) -> None:
    """It is named, never a traceback."""
    assert [said for _, _, said in Drawing(content).wrong] == [message]


@pytest.mark.parametrize(
    "box", ["0 0 . 20", "0 0 1.2.3 20", "0 0 32", "0 0 3e 20", "0 0 32 20 1", "0 0 ٣٢ 20", "e e 9 9"]
)
def test_a_box_that_is_no_four_figures(box: str) -> None:
    """It is called what it is."""
    said = wrong("", opens=OPEN.replace("0 0 32 20", box))
    assert said == ["its <svg> has no viewBox of four figures, which says how large it is"]


@pytest.mark.parametrize("box", ["0 0 0 20", "0 0 32 -20", "0 0 1e999 20"])
def test_a_box_without_a_size(box: str) -> None:
    """A browser would show nothing, or a page could not say how large it is."""
    said = wrong("", opens=OPEN.replace("0 0 32 20", box))
    assert said == ["the width and the height in the viewBox of its <svg> are above 0 and at most a million"]


def test_a_box_in_any_notation_of_figures() -> None:
    """With signs, without a nought, with a power of ten."""
    assert Drawing(OPEN.replace("0 0 32 20", "-1,-.5 +3.2e1 , 20.").encode() + b"</svg>").size == (32, 20)


def test_mistakes_have_their_lines_and_an_end() -> None:
    """Each mistake names the line it stands in, and a file of a thousand is told of by its first."""
    drawing = Drawing(f"{OPEN}\n<g/>\n  <a/>\n{'<script/>' * 1000}</svg>".encode())
    assert drawing.wrong[0] == (3, 3, "<a> is nothing that draws")
    assert len(drawing.wrong) == MOST


def test_no_entity_is_unfolded() -> None:
    """Entities within entities are refused where they are declared, before they could fill the memory."""
    laughs = "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 10}">' for n in range(1, 30))
    assert wrong("<text>&a29;</text>", f'<!DOCTYPE svg [<!ENTITY a0 "ha">{laughs}]>')
