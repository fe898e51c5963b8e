"""The raster picture is the same for ever, of the size asked for, and white on blue."""

import io

import pytest
from PIL import Image

from specimens.portraits import draw_portrait, portrait_png
from tests.specimens.portraits.cast import TASSEL


def test_the_same_plant_gives_the_same_picture() -> None:
    portrait = draw_portrait(TASSEL, seed="x")
    assert portrait_png(portrait, 90) == portrait_png(portrait, 90)


def test_two_plants_have_two_pictures() -> None:
    pictures = {portrait_png(draw_portrait(TASSEL, seed=seed), 60) for seed in "abc"}
    assert len(pictures) == 3


@pytest.mark.parametrize(("size", "height"), [(72, 90), (400, 500)])
def test_it_is_a_quarter_higher_than_wide(size: int, height: int) -> None:
    image = Image.open(io.BytesIO(portrait_png(draw_portrait(TASSEL, seed="x"), size)))
    assert (image.format, image.mode, image.size) == ("PNG", "RGB", (size, height))


def test_it_is_white_on_blue_and_darkest_in_the_corners() -> None:
    image = Image.open(io.BytesIO(portrait_png(draw_portrait(TASSEL, seed="x"), 200)))
    red, green, blue = image.resize((1, 1)).getpixel((0, 0))
    assert blue > green > red
    corner = sum(image.crop((0, 0, 12, 12)).resize((1, 1)).getpixel((0, 0)))
    assert corner < sum(image.crop((94, 20, 106, 32)).resize((1, 1)).getpixel((0, 0)))
    assert max(pixel[0] for pixel in image.get_flattened_data()) > 225


@pytest.mark.parametrize("size", [0, 15, 2001, -3])
def test_a_size_that_makes_no_picture_is_refused(size: int) -> None:
    with pytest.raises(ValueError, match="16 to 2000"):
        portrait_png(draw_portrait({}, seed="x"), size)
