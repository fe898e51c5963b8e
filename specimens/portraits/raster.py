"""A portrait as a picture of dots, with the grain and the dark corners of a hand-made print."""

import hashlib
import io
import math

from PIL import Image, ImageChops, ImageDraw, ImageFilter

from specimens.portraits.shapes import HEIGHT, WIDTH, Portrait, Shape, smoothed

OVERSAMPLE = 3
LIGHT, DEEP, WHITE = (42, 95, 150), (10, 38, 72), (243, 248, 252)


def portrait_png(portrait: Portrait, size: int) -> bytes:
    """Return the portrait as a PNG `size` dots wide and a quarter higher; the same for ever.

    Plainly a drawing, for the demonstration's plants that have a "photograph".
    """
    if not 16 <= size <= 2000:
        raise ValueError(f"a portrait is 16 to 2000 dots wide, not {size}")
    image = _ground(size)
    for shape in portrait.shapes:
        mask, corner = _mask(shape, size)
        image.paste(
            DEEP if shape.dark else WHITE, (*corner, corner[0] + mask.width, corner[1] + mask.height), mask
        )
    image = ImageChops.soft_light(image, _grain(portrait.seed, image.size))
    out = io.BytesIO()
    image.save(out, "PNG")
    return out.getvalue()


def _ground(size: int) -> Image.Image:
    """Prussian blue, lighter in the middle."""
    height = size * HEIGHT // WIDTH
    fall = Image.radial_gradient("L").resize((size, height), Image.Resampling.BILINEAR)
    fall = fall.point([min(255, round(level * level / 255 * 1.15)) for level in range(256)])
    return Image.composite(Image.new("RGB", fall.size, DEEP), Image.new("RGB", fall.size, LIGHT), fall)


def _mask(shape: Shape, size: int) -> tuple[Image.Image, tuple[int, int]]:
    """The shape alone, and where its upper left corner lies in the picture."""
    scale = size / WIDTH
    points = [(x * scale, y * scale) for x, y in smoothed(shape)]
    spare = 2 + math.ceil(shape.width * scale)
    left, top = (math.floor(min(axis)) - spare for axis in zip(*points, strict=True))
    right, bottom = (math.ceil(max(axis)) + spare for axis in zip(*points, strict=True))
    large = Image.new("L", ((right - left) * OVERSAMPLE, (bottom - top) * OVERSAMPLE))
    moved = [((x - left) * OVERSAMPLE, (y - top) * OVERSAMPLE) for x, y in points]
    draw = ImageDraw.Draw(large)
    level = round(255 * shape.opacity)
    if shape.width:
        draw.line(moved, fill=level, width=max(1, round(shape.width * scale * OVERSAMPLE)), joint="curve")
    else:
        draw.polygon(moved, fill=level)
    return large.resize((right - left, bottom - top), Image.Resampling.BOX), (left, top)


def _grain(seed: str, size: tuple[int, int]) -> Image.Image:
    """Paper grain: fine noise over coarse, both hashed from the seed."""
    width, height = size
    coarse = (math.ceil(width / 3), math.ceil(height / 3))
    fine = _noise(seed + "/fine", size)
    clouds = _noise(seed + "/coarse", coarse).resize(size, Image.Resampling.BICUBIC)
    return Image.blend(fine, clouds.filter(ImageFilter.GaussianBlur(1)), 0.5).convert("RGB")


def _noise(seed: str, size: tuple[int, int]) -> Image.Image:
    dots = hashlib.shake_128(seed.encode("utf-8", "surrogatepass")).digest(size[0] * size[1])
    return Image.frombytes("L", size, dots).point([88 + level * 80 // 255 for level in range(256)])
