"""Drawings that the owner brings: SVG that only draws, or a refusal by its line.

A drawing is shown as an image, where it can do nothing; but it is a file of the site too, and who opens it by its own
address would run what is in it. So it holds shapes, text and styles, and no script, no event, no link, no address
outside the file. Marks that drawing programs leave in namespaces of their own draw nothing, and stay.
"""

from __future__ import annotations

import re
from xml.parsers.expat import ExpatError, ParserCreate

SVG = "http://www.w3.org/2000/svg"
RUNS = ("http://www.w3.org/1999/xhtml", "http://www.w3.org/1998/Math/MathML")
"""Namespaces besides SVG's whose elements a browser shows and runs."""
DRAWS = frozenset(
    """svg g defs symbol use title desc metadata switch style path rect circle ellipse line polyline polygon text tspan
    textPath image marker pattern mask clipPath linearGradient radialGradient stop filter feBlend feColorMatrix
    feComponentTransfer feComposite feConvolveMatrix feDiffuseLighting feDisplacementMap feDistantLight feDropShadow
    feFlood feFuncA feFuncB feFuncG feFuncR feGaussianBlur feMerge feMergeNode feMorphology feOffset fePointLight
    feSpecularLighting feSpotLight feTile feTurbulence""".split()
)
ENCODINGS = ("utf-8", "utf-16", "us-ascii", "iso-8859-1")
"""Those that this reader and every browser read alike."""
MOST = 20
"""Mistakes told of one drawing."""
_PICTURE = re.compile(r"data:image/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]*")
_FETCHES = re.compile(r"""url\(\s*(?!["']?\s*#)|@import|image-set\(|\\""", re.IGNORECASE)
"""What in styles leads out of the file; a backslash could hide it."""
_FIGURE = r"[-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]+)?"
_BOX = re.compile(rf"\s*{_FIGURE}[\s,]+{_FIGURE}[\s,]+({_FIGURE})[\s,]+({_FIGURE})\s*")
"""Figures as SVG 2 writes them (section 8.6, and CSS Values 3, section 5.2)."""
LARGEST_SIDE = 1_000_000


class Drawing:
    """A drawing as it was read: its size (0 by 0 where it says none), and what is wrong with it by line and column.

    >>> drawing = Drawing(b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 20"><script/></svg>')
    >>> drawing.size, drawing.wrong
    ((32.0, 20.0), [(1, 61, '<script> is nothing that draws')])
    """

    def __init__(self, content: bytes) -> None:
        self.size = (0.0, 0.0)
        self.wrong: list[tuple[int, int, str]] = []
        self._inside: list[str] = []
        self._style = ""
        self._parser = parser = ParserCreate(namespace_separator=" ")
        parser.XmlDeclHandler = self._take_encoding
        parser.StartElementHandler, parser.EndElementHandler = self._start, self._end
        parser.CharacterDataHandler = self._take_text
        parser.EntityDeclHandler = lambda *_: self._note("an <!ENTITY> is more than a drawing needs")
        parser.ProcessingInstructionHandler = lambda name, _: self._note(f"<?{name}?> is more than a drawing needs")
        try:
            parser.Parse(content, True)
        except ExpatError as broken:
            self._note(f"no SVG that can be read: {str(broken).partition(':')[0]}")
        except (ValueError, LookupError):  # an encoding that there is not
            self._note("no SVG that can be read: it is in an unknown encoding")

    def _note(self, message: str) -> None:
        if len(self.wrong) < MOST:
            self.wrong.append((self._parser.CurrentLineNumber, self._parser.CurrentColumnNumber + 1, message))

    def _take_encoding(self, _version: str, encoding: str | None, _alone: int) -> None:
        if encoding is not None and encoding.lower() not in ENCODINGS:
            self._note(f"it is written in '{encoding}': save it as UTF-8")

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        namespace, _, local = name.rpartition(" ")
        if not self._inside:
            self._take_size(name, attributes)
        elif (namespace == SVG and local not in DRAWS) or namespace in RUNS:
            self._note(f"<{local}> is nothing that draws")
        self._inside.append(name)
        for written, value in attributes.items():
            if message := _wrong_attribute(local, written, value):
                self._note(message)

    def _take_size(self, name: str, attributes: dict[str, str]) -> None:
        box = _BOX.fullmatch(attributes.get("viewBox", ""))
        if name != f"{SVG} svg":
            self._note(f'no drawing: its outermost element is not <svg xmlns="{SVG}">')
        elif box is None:
            self._note("its <svg> has no viewBox of four figures, which says how large it is")
        elif not all(0 < float(side) <= LARGEST_SIDE for side in box.groups()):
            self._note("the width and the height in the viewBox of its <svg> are above 0 and at most a million")
        else:
            self.size = float(box[1]), float(box[2])

    def _take_text(self, words: str) -> None:
        if self._inside[-1] == f"{SVG} style":
            self._style += words

    def _end(self, name: str) -> None:
        self._inside.pop()
        if name == f"{SVG} style":
            if _FETCHES.search(self._style):
                self._note("its styles lead out of the file, which holds all that it needs")
            self._style = ""


def _wrong_attribute(element: str, written: str, value: str) -> str:
    """Why an attribute may not stand at an element; empty where it may."""
    namespace, _, name = written.rpartition(" ")
    if name in ("href", "src"):
        is_inside = value.startswith("#") or (element == "image" and _PICTURE.fullmatch(value))
        return "" if is_inside else f"'{name}' of <{element}> leads out of the file, which holds all that it needs"
    if namespace:
        return ""
    if name.lower().startswith("on"):
        return f"'{name}' of <{element}> runs script"
    if _FETCHES.search(value):
        return f"'{name}' of <{element}> leads out of the file, which holds all that it needs"
    return ""
