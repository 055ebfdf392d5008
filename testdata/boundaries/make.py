"""Writes the boundaries of this folder with GDAL, through pyogrio 0.13 and shapely 2: one invented site in every format.

    pip install pyogrio shapely pyproj && python3 make.py
"""

import warnings
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

import numpy
import pyogrio
import shapely
from pyproj import Transformer

HERE = Path(__file__).parent
FLAT = shapely.Polygon(
    [(-113.70, 42.30), (-113.68, 42.30), (-113.68, 42.31), (-113.70, 42.31), (-113.70, 42.30)],
    [[(-113.695, 42.303), (-113.69, 42.303), (-113.69, 42.306), (-113.695, 42.306), (-113.695, 42.303)]],
)
DRAW = shapely.Polygon([(-113.68, 42.30), (-113.675, 42.30), (-113.675, 42.31), (-113.68, 42.31), (-113.68, 42.30)])
ROAD = shapely.LineString([(-113.70, 42.308), (-113.675, 42.3085)])
STAKED = shapely.LineString([(-113.685, 42.302), (-113.685, 42.30245)])
SITE = "Hollow Flat (invented)"

STRATA = ([FLAT, DRAW], {"site": [SITE, SITE], "stratum": ["flat", "draw"]})
ROADS = ([ROAD, STAKED], {"use": ["keep out", "line"], "buffer": [12.5, 0.0], "line": ["", "K1"]})


def write(name, layer, driver, shapes, fields, crs="EPSG:4326", **more):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        kinds = {shape.geom_type for shape in shapes}
        pyogrio.raw.write(
            HERE / name, shapely.to_wkb(numpy.array(shapes)), [numpy.array(v, dtype=object if isinstance(v[0], str) else float) for v in fields.values()],
            list(fields), geometry_type=kinds.pop() if len(kinds) == 1 else "Unknown", crs=crs, driver=driver, layer=layer, **more,
        )


def moved(crs, shapes):
    there = Transformer.from_crs(4326, crs, always_xy=True)
    return [shapely.transform(shape, there.transform, interleaved=False) for shape in shapes]


for old in HERE.iterdir():
    if old.suffix not in (".py", ".md"):
        old.unlink()
write("site.gpkg", "strata", "GPKG", *STRATA)
write("site.gpkg", "roads", "GPKG", *ROADS, append=True)
write("site-utm.gpkg", "strata", "GPKG", moved(32612, STRATA[0]), STRATA[1], crs="EPSG:32612")
write("site.kml", "strata", "LIBKML", STRATA[0] + ROADS[0], {
    "site": [SITE, SITE, "", ""], "stratum": ["flat", "draw", "", ""], "use": ["", "", "keep out", "line"],
    "buffer": ["0", "0", "12.5", "0"], "line": ["", "", "", "K1"]})
write("strata.shp", None, "ESRI Shapefile", *STRATA)
write("roads.shp", None, "ESRI Shapefile", *ROADS)
write("strata-utm83.shp", None, "ESRI Shapefile", moved(26912, STRATA[0]), STRATA[1], crs="EPSG:26912")
edge = shapely.LineString(FLAT.exterior.coords[:-1])
write("walked.gpx", "tracks", "GPX", [edge], {"name": ["Hollow Flat"]}, dataset_options={"GPX_USE_EXTENSIONS": "NO"})
with ZipFile(HERE / "strata.zip", "w", ZIP_DEFLATED) as packed:
    for part in sorted(HERE.glob("strata.*")):
        if part.suffix != ".zip":
            packed.writestr(ZipInfo(f"site/{part.name}", (2026, 1, 1, 0, 0, 0)), part.read_bytes())
