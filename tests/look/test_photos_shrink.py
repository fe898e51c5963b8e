"""A photograph is made small in the browser before it is sent, without the place it was taken at."""

from __future__ import annotations

import io

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page, expect

from tests.look.conftest import Site, open_page
from tests.look.scripted import scripted

pytestmark = pytest.mark.browser
FORM = '<label for="photo">Photo</label><input type="file" id="photo" data-shrink accept="image/*">'
SCRIPT = """<script type="module" src="{% static 'js/photo.js' %}"></script>"""
TURNED = 6  # EXIF orientation: to be turned a quarter to the right


@pytest.fixture
def page(browser: Browser, site: Site) -> Page:
    page = open_page(browser, site, scripted(FORM, SCRIPT))
    page.evaluate(
        "() => { document.addEventListener('photo-ready', () => { document.body.dataset.ready = 'yes'; }); }"
    )
    return page


def photograph(width: int, height: int) -> bytes:
    """A JPEG that is to be turned and knows where it was taken."""
    picture = Image.new("RGB", (width, height), "#2a5f96")
    exif = picture.getexif()
    exif[0x0112] = TURNED
    exif.get_ifd(0x8825)[1] = "N"
    out = io.BytesIO()
    picture.save(out, "JPEG", exif=exif)
    return out.getvalue()


def choose(page: Page, name: str, kind: str, content: bytes) -> tuple[str, bytes]:
    """The name and bytes of what would be sent after choosing a file."""
    page.set_input_files("#photo", {"name": name, "mimeType": kind, "buffer": content})
    expect(page.locator("body")).to_have_attribute("data-ready", "yes")
    sent = page.evaluate(
        """async () => { const file = document.querySelector('#photo').files[0];
        return [file.name, [...new Uint8Array(await file.arrayBuffer())]]; }"""
    )
    return sent[0], bytes(sent[1])


def test_a_large_photograph_becomes_2000_pixels_upright_and_placeless(page: Page) -> None:
    name, content = choose(page, "IMG 7.HEIC.jpeg", "image/jpeg", photograph(3000, 1500))
    picture = Image.open(io.BytesIO(content))
    assert (name, picture.format, picture.size) == ("IMG 7.HEIC.jpg", "JPEG", (1000, 2000))
    assert not picture.getexif()


def test_a_small_photograph_keeps_its_size(page: Page) -> None:
    _, content = choose(page, "pup.jpg", "image/jpeg", photograph(300, 200))
    assert Image.open(io.BytesIO(content)).size == (200, 300)


@pytest.mark.parametrize(("name", "kind"), [("broken.jpg", "image/jpeg"), ("list.csv", "text/csv")])
def test_what_is_no_picture_goes_as_it_is(page: Page, name: str, kind: str) -> None:
    assert choose(page, name, kind, b"Silver Tassel;1998") == (name, b"Silver Tassel;1998")
