"""What is printed, read back from the PDF: its headings, every piece by its letter, its pages, nothing cut off, nothing
too small to read. The demo house, its list issued and its plans accepted, from a table and from a phone in the dark."""

import re
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.browser.test_drawn import show_demo, to
from tests.look.places import go_to, places

pytestmark = pytest.mark.further

#: Paper, and how wide it is in points.
PAPER = {"Letter": 612, "A4": 595}
WALLS = 16
#: Each sheet: where it is, what shows that it is whole, the most pages that it may take.
SHEETS = {
    "cut list": ("pieces", ".places svg", 1),
    "plan and readings": ("survey", ".page.survey .plan svg", 2),
    "boards": ("boards", ".plan-of-boards svg", 1),
    "walls from in front": ("pieces/walls", f".walls-drawn > :nth-child({WALLS}) svg", 3),
    "strips": (places()["covering"], "main svg", 1),
    "shopping": ("supplies", "main .row", 1),
    "order of work": (places()["work"], "main .row", 1),
    "money": ("house/money", "main table", 1),
    "rooms compared": ("house/rooms", "main :is(table, dl)", 1),
    "boards of the house": ("boards/house", ".plan-of-boards svg", 2),
}
#: What is touched on a screen, and is nothing on paper.
TOUCHED = re.compile(r"Issue the list|Accept this plan|Print the|Files|Closer|Strike|Done, or|Not yet|Save|Add a ")
LEAST = 8.9  # points; the drawings are a hair under 9 on A4


@dataclass(frozen=True)
class Written:
    """A text, where it stands on its page, how high its letters are, and how wide and high the page is, in points."""

    text: str
    x: float
    y: float
    size: float
    wide: float
    high: float


@dataclass(frozen=True)
class Sheet:
    """What was printed: all texts page by page, and all of it with single spaces."""

    pages: list[list[Written]]
    text: str

    @property
    def words(self) -> set[str]:
        """Every word, as it was written: two that stand side by side on the sheet are two."""
        return {word for page in self.pages for one in page for word in one.text.split()}


def read(path: Path) -> Sheet:
    """Gone through once: a sheet with thirty drawings takes half a second."""
    pages: list[list[Written]] = []
    texts: list[str] = []
    for page in PdfReader(path).pages:
        wide, high = float(page.mediabox.width), float(page.mediabox.height)
        found: list[Written] = []

        def note(text, cm, tm, font, size, found=found, wide=wide, high=high):
            if text.strip():
                x, y = tm[4] * cm[0] + tm[5] * cm[2] + cm[4], tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
                scale = abs(tm[0] * cm[0] + tm[1] * cm[2]) or abs(tm[1] * cm[1])
                found.append(Written(text.strip(), x, y, size * scale, wide, high))

        texts.append(page.extract_text(visitor_text=note))
        pages.append(found)
    return Sheet(pages, re.sub(r"\s+", " ", " ".join(texts)))


@pytest.fixture(params=["table", "phone in the dark"])
def demo(request, laptop, used_phone) -> Page:
    """The demo house, with the list of its room issued and its plans accepted."""
    context = used_phone()
    page = show_demo(laptop, context, 1280 if request.param == "table" else 390)
    if request.param != "table":
        page.emulate_media(color_scheme="dark")
    to(page, "pieces", "a.row .ring")
    page.get_by_role("button", name="Issue the list").first.click()
    page.locator(".ring-provisional").first.wait_for(state="detached")
    to(page, "boards", ".plan-of-boards svg")
    accept = page.get_by_role("button", name="Accept this plan")
    accept.first.wait_for()
    for left in range(accept.count(), 0, -1):
        accept.nth(left - 1).click()
        expect(accept).to_have_count(left - 1)
    return page


def grounds_of(path: Path) -> set[tuple[str, ...]]:
    """The colors of all that is filled and as large as a page: a dark screen must print black on white."""
    filled = r"([\d.]+) ([\d.]+) ([\d.]+) rg\s+[\d.-]+ [\d.-]+ ([\d.]+) ([\d.]+) re\s+f"
    drawn = "".join(page.get_contents().get_data().decode("latin-1") for page in PdfReader(path).pages)
    return {one[:3] for one in re.findall(filled, drawn) if float(one[3]) > 300 and float(one[4]) > 300}


def lowest_of(page: list[Written]) -> list[str]:
    """The last text of each column: no heading stands there."""
    columns: dict[bool, list[Written]] = {}
    for one in page:
        columns.setdefault(one.x > one.wide / 2, []).append(one)
    return [min(column, key=lambda one: one.y).text for column in columns.values()]


def pages_printed(demo: Page, tmp_path: Path, place: str, shows: str, size: str) -> Path:
    go_to(demo, place)
    demo.locator(shows).first.wait_for()
    if ".walls-drawn" in shows:
        expect(demo.locator(".walls-drawn svg")).to_have_count(WALLS)
    file = tmp_path / "sheet.pdf"
    demo.pdf(path=file, format=size)
    return file


def test_every_sheet_is_headed_on_every_page_and_whole_and_can_be_read_at_a_saw(demo, tmp_path):
    go_to(demo, "pieces")
    letters = demo.locator("main .row .ring").all_inner_texts()
    assert len(letters) > 30
    for name, (place, shows, most) in SHEETS.items():
        for size, width in PAPER.items():
            file = pages_printed(demo, tmp_path, place, shows, size)
            sheet, where = read(file), (name, size)
            pages, text, words = sheet.pages, sheet.text, sheet.words
            assert 1 <= len(pages) <= most, where
            of_house = name in ("money", "rooms compared", "boards of the house")
            for number, page in enumerate(pages, start=1):
                top = " ".join(one.text for one in page if one.y > page[0].high - 90)
                for said in ("The bungalow", "revision ", f"page {number} of {len(pages)}"):
                    assert said in top, (*where, said, top)
                assert ("Sewing room" in top) is not of_house, where
                assert re.search(r"\d{1,4}[/.-]\d{1,2}[/.-]\d{1,4}", top), where
                assert len(page) > 8, where  # a page with a caution on it alone is a sheet wasted
                assert [one for one in page if abs(one.wide - width) > 1] == [], where
                assert [one for one in page if not (0 < one.x < one.wide and 0 < one.y < one.high)] == [], where
                assert [one for one in page if one.size < LEAST] == [], where
            assert TOUCHED.findall(text) == [], where
            assert grounds_of(file) <= {("1", "1", "1")}, where
            assert [one for page in pages for one in lowest_of(page) if re.fullmatch(r"wall \d+", one)] == [], where
            if name in ("cut list", "boards"):
                assert [letter for letter in letters if letter not in words] == [], where
            if name == "plan and readings":  # folded on the screen
                assert text.count("along the floor") >= WALLS, where
            if name == "walls from in front":
                for number in range(1, WALLS + 1):
                    assert re.search(rf"wall {number}, from in front · \d[\d /]*\" long", text), (*where, number)


@pytest.mark.parametrize("demo", ["table"], indirect=True)
def test_pieces_that_are_cut_stay_on_the_printed_list(demo, tmp_path):
    to(demo, "pieces/A", ".button-main")
    demo.get_by_role("button", name="Mark it cut").click()
    demo.get_by_role("button", name="Mark it fitted").wait_for()
    file = pages_printed(demo, tmp_path, *SHEETS["cut list"][:2], "Letter")
    sheet = read(file)
    assert re.search(r"\bCut 1\b", sheet.text)
    assert "A" in sheet.words


def test_every_piece_has_its_label_and_every_sheet_of_them_its_heading(demo, tmp_path):
    go_to(demo, "pieces")
    letters = demo.locator("main .row .ring").all_inner_texts()
    to(demo, "pieces/labels", ".labels .ring")
    file = tmp_path / "labels.pdf"
    for sheet, count, size in (("Letter, 30 labels", 30, 612), ("A4, 21 labels", 21, 595)):
        demo.get_by_role("radio", name=sheet).check()
        demo.pdf(path=file, prefer_css_page_size=True)
        labels = read(file)
        pages, words = labels.pages, labels.words
        assert len(pages) == -(-len(letters) // count)
        assert [one for page in pages for one in page if abs(one.wide - size) > 1] == []
        assert [letter for letter in letters if letter not in words] == []
        assert labels.text.count("Sewing room") >= len(letters) + len(pages)
        assert [one for page in pages for one in page if one.size < LEAST] == []
        for page in pages:
            assert any("revision" in one.text and one.y > one.high - 40 for one in page)
