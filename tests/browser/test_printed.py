"""What is printed, read back from the PDF: its heading, every piece by its letter, its pages, nothing cut off."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader

from tests.browser.test_drawn import show_demo, to
from tests.look.places import places

pytestmark = pytest.mark.further

#: Each sheet: where it is, what shows that it is whole, the most pages that it may take.
SHEETS = {
    "pieces": ("pieces", ".places svg", 1),
    "plan": ("survey", ".page.survey .plan svg", 1),
    "boards": ("boards", ".plan-of-boards svg", 3),
    "strips": (places()["covering"], "main svg", 3),
    "shopping": ("supplies", "main .row", 3),
}


@pytest.fixture
def demo(laptop, used_phone) -> Page:
    return show_demo(laptop, used_phone(), 1280)


def read(path: Path) -> tuple[int, str]:
    """How many pages, and all their text with single spaces."""
    pages = PdfReader(path).pages
    return len(pages), re.sub(r"\s+", " ", " ".join(page.extract_text() for page in pages))


def words_of(path: Path) -> set[str]:
    """Every word, as it was written: two that stand side by side on the sheet are two."""
    found: set[str] = set()
    for page in PdfReader(path).pages:
        page.extract_text(visitor_text=lambda text, *_: found.update(text.split()))
    return found


def places_of(path: Path) -> list[tuple[float, float, float, float]]:
    """Where each text stands on its page, with how wide and high the page is, in points."""
    found: list[tuple[float, float, float, float]] = []
    for page in PdfReader(path).pages:
        wide, high = float(page.mediabox.width), float(page.mediabox.height)

        def note(text, cm, tm, font, size, wide=wide, high=high):
            if text.strip():
                x, y = tm[4] * cm[0] + tm[5] * cm[2] + cm[4], tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
                found.append((x, y, wide, high))

        page.extract_text(visitor_text=note)
    return found


@pytest.mark.parametrize(("size", "width"), [("Letter", 612), ("A4", 595)])
def test_sheets_are_headed_and_whole_and_name_every_piece(demo, tmp_path, size, width):
    to(demo, "pieces", ".places svg")
    letters = demo.locator("main .row .ring").all_inner_texts()
    assert len(letters) > 10
    file = tmp_path / "sheet.pdf"
    for name, (place, shows, most) in SHEETS.items():
        to(demo, place, shows)
        demo.pdf(path=file, format=size)
        pages, text = read(file)
        assert 1 <= pages <= most, name
        for words in ("The bungalow", "Sewing room", "revision "):
            assert words in text, (name, words)
        assert re.search(r"\d{1,4}[/.-]\d{1,2}[/.-]\d{1,4}", text), name
        if name in ("pieces", "boards"):
            assert [letter for letter in letters if letter not in words_of(file)] == [], name
        standing = places_of(file)
        assert {int(at[2]) for at in standing} == {width}, name
        assert len(standing) > 10, name
        assert [at for at in standing if not (0 <= at[0] <= at[2] and 0 <= at[1] <= at[3])] == [], name


def test_every_piece_has_its_label_and_its_length_on_it(demo, tmp_path):
    to(demo, "pieces", ".places svg")
    letters = demo.locator("main .row .ring").all_inner_texts()
    demo.get_by_role("button", name="Issue the list").first.click()
    to(demo, "pieces/labels", ".labels .ring")
    demo.pdf(path=tmp_path / "labels.pdf", prefer_css_page_size=True)
    pages, text = read(tmp_path / "labels.pdf")
    assert pages == -(-len(letters) // 30)
    assert [letter for letter in letters if letter not in words_of(tmp_path / "labels.pdf")] == []
    assert text.count("Sewing room") >= len(letters)
    on_first = PdfReader(tmp_path / "labels.pdf").pages[0].extract_text()
    assert on_first.count("Sewing room") == 30, "a row of labels went over to the next sheet"
