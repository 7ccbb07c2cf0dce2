"""Photos and drawings of the small book: sized, compressed, described; and those that cannot be shown are named."""

from __future__ import annotations

import json
import os
import re
from io import BytesIO
from pathlib import Path
from random import Random

import pytest
from PIL import Image

from build_tools.book.checks import check
from build_tools.book.checks.context import Context
from build_tools.book.checks.pictures import LARGEST
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.browser.offline import SERVED
from build_tools.pages.pictures import WIDEST, SitePicture, make_pictures
from build_tools.pages.prebuild import prebuild
from build_tools.pages.renderer import Renderer
from tests.builds import FEW, SMALL, change, context_of, copy_book, pages_of
from tests.site_pages import SitePage, attribute, text_of

STEP = "  - id: lower\n"
FILE = "plumbing/set-bowl.yaml"
DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 320 200"><path d="M0 0h320v200z"/></svg>'
LOCATION = 0x8825
"""The tag of a photo that holds where it was taken (Exif 2.32, table 4, GPS Info IFD Pointer)."""


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A copy of the small book."""
    return copy_book(tmp_path, SMALL)


def show(book: Path, field: str, file: str) -> None:
    """Put a picture at the first step."""
    picture = f"    {field}:\n      file: {file}\n      alt: The flange & the floor\n      caption: Measured here\n"
    change(book / FILE, STEP, picture + STEP)


def photo(width: int, height: int, **saved: object) -> bytes:
    """A photo of that size with much in it."""
    noise = Image.effect_noise((width // 8, height // 8), 80).resize((width, height)).convert("RGB")
    file = BytesIO()
    noise.save(file, "JPEG", quality=95, **saved)
    return file.getvalue()


def made(book: Path, kept: Path) -> SitePicture:
    """The one picture of the book, as the site carries it."""
    pictures, unreadable = make_pictures(context_of(book, FEW).book, kept)
    assert unreadable == []
    (shown,) = pictures.values()
    return shown


def image_of(book: Path, kept: Path) -> dict[str, str]:
    """The image on the page of the procedure."""
    page = SitePage.of(pages_of(book, kept, FEW)["plumbing/set-bowl.html"])
    (image,) = page.select("img")
    assert text_of(page.select(".picture")[0]) == "Measured here"
    return {name: attribute(image, name) for name in image.attrs}


def diagnostics(book: Path, kept: Path) -> list[str]:
    """What is said of a book whose pictures cannot be shown."""
    from build_tools.book.checks import check_book

    loaded = load_book(book)
    found = check_book(loaded.book, FEW)
    return [str(diagnostic) for diagnostic in found or make_pictures(loaded.book, kept)[1]]


def test_a_photo_is_sized_compressed_and_described(book: Path, tmp_path: Path) -> None:
    """A phone's photo comes to at most 1280 wide and a tenth of its bytes, with words, width and height."""
    raw = photo(4000, 3000)
    (book / "plumbing" / "flange.jpg").write_bytes(raw)
    show(book, "photo", "flange.jpg")
    shown = made(book, tmp_path / "kept")
    assert (shown.width, shown.height) == (WIDEST, 960) == Image.open(BytesIO(shown.content)).size
    assert len(shown.content) < len(raw) / 10
    image = image_of(book, tmp_path / "kept")
    assert image["src"] == f"../{shown.url}"
    assert (image["alt"], image["width"], image["height"]) == ("The flange & the floor", "1280", "960")


def test_a_small_photo_is_not_enlarged(book: Path, tmp_path: Path) -> None:
    """A photo below the width keeps its size."""
    (book / "plumbing" / "flange.jpg").write_bytes(photo(640, 480))
    show(book, "photo", "flange.jpg")
    shown = made(book, tmp_path / "kept")
    assert (shown.width, shown.height) == (640, 480)


def test_a_photo_stands_upright_and_tells_no_place(book: Path, tmp_path: Path) -> None:
    """A photo taken with the phone on its side is turned, and where it was taken is left out."""
    exif = Image.Exif()
    exif[0x0112] = 6
    exif.get_ifd(LOCATION)[1] = "N"
    raw = photo(800, 400, exif=exif)
    assert Image.open(BytesIO(raw)).getexif().get_ifd(LOCATION)
    (book / "plumbing" / "flange.jpg").write_bytes(raw)
    show(book, "photo", "flange.jpg")
    shown = made(book, tmp_path / "kept")
    assert (shown.width, shown.height) == (400, 800)
    assert dict(Image.open(BytesIO(shown.content)).getexif()) == {}


def test_a_clear_background_is_white(book: Path, tmp_path: Path) -> None:
    """Where a picture is see-through the paper shows, not black."""
    Image.new("RGBA", (40, 40), (0, 0, 0, 0)).save(book / "plumbing" / "flange.png")
    show(book, "photo", "flange.png")
    shown = made(book, tmp_path / "kept")
    pixel = Image.open(BytesIO(shown.content)).convert("RGB").getpixel((20, 20))
    assert isinstance(pixel, tuple) and min(pixel) > 240


def test_a_photo_is_made_once(book: Path, tmp_path: Path) -> None:
    """The second build takes the compressed photo from where the first kept it, until the photo changes."""
    (book / "plumbing" / "flange.jpg").write_bytes(photo(640, 480))
    show(book, "photo", "flange.jpg")
    first = made(book, tmp_path / "kept")
    (held,) = (tmp_path / "kept").iterdir()
    stamp = held.stat().st_mtime_ns
    assert made(book, tmp_path / "kept") == first
    assert held.stat().st_mtime_ns == stamp
    (book / "plumbing" / "flange.jpg").write_bytes(photo(480, 640))
    assert made(book, tmp_path / "kept").url != first.url


def test_a_drawing_is_shown_as_it_is(book: Path, tmp_path: Path) -> None:
    """A drawing keeps its bytes, with words and the size of its box."""
    (book / "plumbing" / "flange.svg").write_text(DRAWING, encoding="utf-8")
    show(book, "drawing", "flange.svg")
    assert made(book, tmp_path / "kept").content == DRAWING.encode()
    image = image_of(book, tmp_path / "kept")
    assert re.fullmatch(r"\.\./pictures/flange-[0-9a-f]{16}\.svg", image["src"])
    assert (image["alt"], image["width"], image["height"]) == ("The flange & the floor", "320", "200")


NAMES = ["step #2", "why?", "100%", "Träger & Co. (1)", "a b", "+:;=@!$'*,[]~", "..", "図", "x" * 200]


def test_any_name_of_a_picture_gives_an_address_that_needs_no_escape(book: Path, tmp_path: Path) -> None:
    """Else the page would ask for a part of it, or a device for another one, and not one file of the book be kept."""
    written = []
    for name in NAMES:
        (book / "plumbing" / f"{name}.svg").write_text(DRAWING, encoding="utf-8")
        before = (book / FILE).read_text(encoding="utf-8")
        show(book, "drawing", json.dumps(f"{name}.svg"))
        shown = made(book, tmp_path / "kept")
        assert image_of(book, tmp_path / "kept")["src"] == f"../{shown.url}"
        assert SERVED.fullmatch(shown.url) and len(shown.url) < 100
        written.append(shown.url.removeprefix("pictures/")[:-21])
        (book / FILE).write_text(before, encoding="utf-8")
    assert written == ["step-2", "why", "100", "Tr-ger-Co-1", "a-b", "", "", "", "x" * 60]


LINE = 1 + (SMALL / FILE).read_text(encoding="utf-8").split(STEP)[0].count("\n") + 1
"""Where the name of the picture's file then stands."""


@pytest.mark.parametrize(
    ("field", "file", "content", "message"),
    [
        ("photo", "flange.jpg", b"", "'flange.jpg' cannot be read as a photo"),
        ("photo", "flange.jpg", b"no photo", "'flange.jpg' cannot be read as a photo"),
        ("photo", "flange.jpg", photo(640, 480)[:5000], "'flange.jpg' cannot be read as a photo"),
        ("drawing", "flange.png", b"x", "'flange.png' is no drawing: it ends in .svg"),
        ("photo", "flange.gif", b"x", "'flange.gif' is no photo: it ends in .jpg or .jpeg or .png or .webp"),
        ("photo", "../flange.jpg", b"x", "'../flange.jpg' is a path; a photo lies beside the YAML file"),
        ("photo", "flange.jpg", None, "there is no file 'flange.jpg' beside this one"),
    ],
)
def test_a_picture_that_cannot_be_shown_is_named(
    field: str, file: str, content: bytes | None, message: str, book: Path, tmp_path: Path
) -> None:
    """The one diagnostic names the file and the line of the step that wants it."""
    if content is not None:
        (book / "plumbing" / file).write_bytes(content)
    show(book, field, file)
    assert diagnostics(book, tmp_path / "kept") == [f"procedures/{FILE}:{LINE}:13: error: {message}"]


def test_a_drawing_that_does_more_is_named_by_its_line(book: Path, tmp_path: Path) -> None:
    """The diagnostics name the drawing's own lines, and it is not published; `check` and `build` say the same."""
    head = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"'
    more = f'{head}\n onload="run()">\n  <a href="https://example.org"/></svg>'
    (book / "plumbing" / "flange.svg").write_text(more, encoding="utf-8")
    show(book, "drawing", "flange.svg")
    file, hint = "procedures/plumbing/flange.svg", "take it out, or save the drawing as plain SVG"
    assert diagnostics(book, tmp_path / "kept") == [
        f"{file}:1:1: error: 'onload' of <svg> runs script\n    {hint}",
        f"{file}:3:3: error: 'href' of <a> leads out of the file, which holds all that it needs\n    {hint}",
        f"{file}:3:3: error: <a> is nothing that draws\n    {hint}",
    ]
    assert make_pictures(load_book(book).book, tmp_path / "kept") == ({}, [])


def test_a_huge_photo_is_refused(book: Path, tmp_path: Path) -> None:
    """A file beyond the limit is named with its size and what to do, and is not read."""
    with (book / "plumbing" / "flange.jpg").open("wb") as file:
        file.truncate(LARGEST + 10_000_000)
    show(book, "photo", "flange.jpg")
    said = f"procedures/{FILE}:{LINE}:13: error: 'flange.jpg' has 40 MB; at most 30 MB\n    save it smaller"
    assert diagnostics(book, tmp_path / "kept") == [said]


@pytest.mark.parametrize("field, file", [("photo", "flange.jpg"), ("drawing", "flange.svg")])
def test_what_is_no_file_is_never_opened(field: str, file: str, book: Path, tmp_path: Path) -> None:
    """A pipe that nobody writes into is named with what it is, by `check` and by a build, and neither waits for it."""
    os.mkfifo(book / "plumbing" / file)
    show(book, field, file)
    assert make_pictures(load_book(book).book, tmp_path / "kept") == ({}, [])
    (said,) = diagnostics(book, tmp_path / "kept")
    no_file = "is no file that can be read, but a folder, a pipe or a device"
    assert said == f"procedures/{FILE}:{LINE}:13: error: '{file}' {no_file}\n    put the {field} itself here"


@pytest.mark.parametrize("name", ["flange.svg", ".hidden.svg"])
@pytest.mark.parametrize("target", ["/dev/zero", "outside.svg"])
def test_a_link_out_of_the_book_is_not_followed(target: str, name: str, book: Path, tmp_path: Path) -> None:
    """It is named where a step wants it; a build reads nothing of what lies there, however much it is."""
    (tmp_path / "outside.svg").write_text(DRAWING, encoding="utf-8")
    (book / "plumbing" / name).symlink_to(tmp_path / target)
    show(book, "drawing", name)
    said = f"'{name}' is a link out of the book's folder, and is not followed\n    put the drawing itself here"
    assert diagnostics(book, tmp_path / "kept") == [f"procedures/{FILE}:{LINE}:13: error: {said}"]
    assert make_pictures(load_book(book).book, tmp_path / "kept") == ({}, [])


def test_a_damaged_photo_never_ends_in_a_traceback(book: Path, tmp_path: Path) -> None:
    """Photos with bytes changed are shown or named; no decoder's own mistake comes through."""
    drawn = Random(3)
    raw = [photo(64, 48), photo(64, 48, exif=Image.Exif())]
    clear = BytesIO()
    Image.new("RGBA", (40, 40), (0, 0, 0, 9)).save(clear, "PNG", exif=b"Exif\0\0II*\0\x08\0\0\0\0\0")
    show(book, "photo", "flange.jpg")
    loaded = load_book(book).book
    for _ in range(400):
        damaged = bytearray(drawn.choice([*raw, clear.getvalue()]))
        for _ in range(drawn.choice([1, 2, 4, 8])):
            damaged[drawn.randrange(min(len(damaged), 200))] = drawn.randrange(256)
        (book / "plumbing" / "flange.jpg").write_bytes(damaged)
        pictures, unreadable = make_pictures(loaded, tmp_path / "kept")
        assert len(pictures) + len(unreadable) == 1


def test_a_missing_picture_in_a_large_book_is_named(book: Path) -> None:
    """Pages that are made ahead on another core do not stumble over it."""
    text = (book / FILE).read_text(encoding="utf-8")
    for number in range(60):
        (book / f"plumbing/set-bowl-{number}.yaml").write_text(text, encoding="utf-8")
    picture = "    photo: {file: bowl.jpg, alt: The bowl}\n"
    change(book / "plumbing/set-bowl-7.yaml", STEP, picture + STEP)
    context = Context.of(load_book(book).book, Memo(), FEW)
    pictures, _ = make_pictures(context.book, book / "kept")
    prebuild(Renderer(context, pictures, "Small"))
    (diagnostic,) = check(context)
    assert str(diagnostic).endswith("error: there is no file 'bowl.jpg' beside this one")
    assert diagnostic.file.endswith("plumbing/set-bowl-7.yaml")
