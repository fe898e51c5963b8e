"""Plant portraits: white silhouettes on Prussian blue, drawn from a plant's traits and seeded by its code."""

from specimens.portraits.drawing import draw_portrait
from specimens.portraits.raster import portrait_png
from specimens.portraits.shapes import Portrait, Shape
from specimens.portraits.svg import portrait_svg

__all__ = ["Portrait", "Shape", "draw_portrait", "portrait_png", "portrait_svg"]
