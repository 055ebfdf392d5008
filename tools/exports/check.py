"""Exports against programs that we didn't write. Prints what it looked at, and 'N passed, N failed' at the end."""

import csv
import json
import os
import sqlite3
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path
from xml.etree import ElementTree

CHECKS = []


def check(form):
    """A check of one form, given its folder and the figures that `tautline assess --json` printed."""

    def keep(function):
        CHECKS.append((form, function))
        return function

    return keep


def near(found, wanted, tolerance=1e-12):
    assert abs(found - wanted) <= tolerance * max(1.0, abs(wanted)), f"{found} is not {wanted}"


def canopy(figures, site):
    """The figure of a site's canopy, as printed."""
    for one in figures["assessments"]:
        if one["site"] == site:
            return next(f for f in one["figures"] if f["subject"] == "canopy" and f["attribute"] == "cover")
    raise AssertionError(f"no figure of {site}")


@check("package")
def a_data_package_is_valid_by_frictionless(folder, _):
    from frictionless import validate

    report = validate(str(folder / "datapackage.json"))
    assert report.valid, report.flatten(["title", "rowNumber", "fieldName", "note"])
    assert len(report.tasks) == 13, len(report.tasks)


@check("package")
def its_figures_are_those_of_assess(folder, figures):
    from frictionless import Package

    rows = Package(str(folder / "datapackage.json")).get_resource("results").read_rows()
    for row in rows:
        if (row["subject"], row["attribute"]) == ("canopy", "cover"):
            wanted = canopy(figures, row["site"])
            near(float(row["estimate"]), wanted["estimate"]["value"], 0)
            near(float(row["standard_error"]), wanted["estimate"]["se"], 0)
            near(float(row["interval_low"]), wanted["interval"][0], 0)


def run(*words):
    """What a program printed; it must have ended well."""
    done = subprocess.run(words, capture_output=True, text=True)
    assert done.returncode == 0, f"{words[0]}: {done.stdout}{done.stderr}"
    return done.stdout + done.stderr


# The schemas that may be handed on stand with the tests.
SCHEMAS = Path(__file__).parents[2] / "testdata/published/schemas"


class NotAtHand(Exception):
    """A standard's own file that must be kept out of the product, and isn't on this machine."""


def standards(name):
    """A standard's own file that is kept out of the product: TAUTLINE_STANDARDS names the folder that holds it."""
    path = Path(os.environ.get("TAUTLINE_STANDARDS", "/nowhere")) / name
    if not path.exists():
        raise NotAtHand(f"TAUTLINE_STANDARDS names no folder with {name}")
    return str(path)


def recalculated(file):
    """The workbook without the values that we wrote, worked out again by LibreOffice."""
    import openpyxl

    with tempfile.TemporaryDirectory() as at:
        bare = Path(at) / "bare.xlsx"
        openpyxl.load_workbook(file).save(bare)
        assert openpyxl.load_workbook(bare, data_only=True)["results"]["H2"].value is None
        profile = f"-env:UserInstallation=file://{at}/profile"
        run("soffice", profile, "--headless", "--convert-to", "xlsx", "--outdir", f"{at}/out", str(bare))
        return openpyxl.load_workbook(f"{at}/out/bare.xlsx", data_only=True)


@check("workbook")
def libreoffice_works_out_the_figures_that_stand_in_the_workbook(folder, figures):
    import openpyxl

    file = folder / "tautline.xlsx"
    formulas, values, again = openpyxl.load_workbook(file), openpyxl.load_workbook(file, data_only=True), recalculated(file)
    followed = {}
    for sheet in formulas:
        heads = [cell.value for cell in sheet[1]]
        for row in sheet.iter_rows(min_row=2):
            for cell in row:
                if isinstance(cell.value, str) and cell.value.startswith("=") and cell.data_type == "f":
                    ours, theirs = values[sheet.title][cell.coordinate].value, again[sheet.title][cell.coordinate].value
                    assert isinstance(theirs, (int, float)), f"{sheet.title} {cell.coordinate}: {cell.value} is {theirs}"
                    near(theirs, ours, 1e-9)
                    name = f"{sheet.title} {heads[cell.column - 1]}"
                    followed[name] = followed.get(name, 0) + 1
    print("        ", followed)
    for name in ["line_cover canopy_m", "parts standard_error", "results estimate", "results t_low"]:
        assert followed.get(name), f"no formula for {name}: {followed}"
    results = values["results"]
    heads = [cell.value for cell in results[1]]
    for row in results.iter_rows(min_row=2, values_only=True):
        row = dict(zip(heads, row))
        if (row["subject"], row["attribute"]) == ("canopy", "cover"):
            near(row["estimate"], canopy(figures, row["site"])["estimate"]["value"])
            near(row["standard_error"], canopy(figures, row["site"])["estimate"]["se"])


@check("geojson")
def gdal_finds_the_lines_where_they_are_told(folder, _):
    said = run("ogrinfo", "-ro", "-al", str(folder / "lines.geojson"))
    assert "Feature Count: 9" in said, said
    assert "LINESTRING (-113.204561234 38.512345678" in said, said
    assert "Rim Draw" in said and "-113.3123" not in said, said


@check("gpx")
def gpx_is_valid_and_holds_the_lines_that_are_told_exactly(folder, _):
    run("xmllint", "--nonet", "--noout", "--schema", str(SCHEMAS / "gpx-1.1.xsd"), str(folder / "lines.gpx"))
    said = run("ogrinfo", "-ro", "-so", str(folder / "lines.gpx"), "routes")
    assert "Feature Count: 4" in said, said


@check("geopackage")
def gdal_and_sqlite_read_the_geopackage(folder, figures):
    file = str(folder / "tautline.gpkg")
    said = run("ogrinfo", "-ro", "-al", file)
    assert "ERROR" not in said and "Warning" not in said, said
    assert "LINESTRING (-113.204561234 38.512345678" in said, said
    drawn = run("ogrinfo", "-ro", "-so", file, "lines_drawn")
    assert "Feature Count: 4" in drawn and 'ID["EPSG",4326]' in drawn and "Line String" in drawn, drawn
    points = run("ogrinfo", "-ro", "-so", file, "points_drawn")
    assert "Feature Count: 3" in points and "Point" in points, points
    database = sqlite3.connect(file)
    assert database.execute("pragma application_id").fetchone()[0] == 0x47504B47
    assert database.execute("pragma integrity_check").fetchone()[0] == "ok"
    assert database.execute("pragma foreign_key_check").fetchall() == []
    for site, value in database.execute(
        "select site, estimate from results where subject = 'canopy' and attribute = 'cover'"
    ):
        near(value, canopy(figures, site)["estimate"]["value"], 0)


@check("parquet")
def duckdb_and_arrow_read_the_columns(folder, figures):
    import duckdb
    import pyarrow.parquet

    rows = duckdb.sql(f"select site, estimate from '{folder}/results.parquet' where subject = 'canopy'").fetchall()
    assert len(rows) == 3, rows
    for site, value in rows:
        near(value, canopy(figures, site)["estimate"]["value"], 0)
    joined = duckdb.sql(
        f"select sum(length_m) from '{folder}/intercepts.parquet' join '{folder}/visits.parquet' using (visit) "
        "where site = 'Hollow Flat' and line = '1' and state = 'live' and date = date '2026-06-09'"
    ).fetchall()[0][0]
    near(joined, 0.80 + 0.52 + 0.03)
    whole = pyarrow.parquet.ParquetFile(folder / "intercepts.parquet")
    assert whole.read().num_rows == 14, whole.metadata
    assert whole.metadata.metadata[b"title"], whole.metadata.metadata
    said = duckdb.sql(f"select path_in_schema, key_value_metadata from parquet_metadata('{folder}/intercepts.parquet')")
    columns = dict(said.fetchall())
    assert columns["length_m"][b"unit"] == b"m" and columns["length_m"][b"description"], columns["length_m"]
    for file in folder.glob("*.parquet"):
        text = Path(str(file).replace("/parquet/", "/package/")).with_suffix(".csv")
        rows = pyarrow.parquet.read_table(file).to_pylist()
        with open(text, newline="") as lines:
            wanted = list(csv.DictReader(lines))
        assert len(rows) == len(wanted), file
        for row, want in zip(rows, wanted):
            for name, value in row.items():
                shown = "" if value is None else str(value).lower() if isinstance(value, bool) else str(value)
                if isinstance(value, float):
                    near(value, float(want[name]), 0)
                else:
                    assert shown == want[name].removeprefix("'"), (file.name, name, shown, want[name])


@check("darwin-core")
def its_metadata_is_valid(folder, _):
    with zipfile.ZipFile(folder / "darwin-core.zip") as packed, tempfile.TemporaryDirectory() as at:
        packed.extract("eml.xml", at)
        ElementTree.parse(f"{at}/eml.xml")
        run("xmllint", "--nonet", "--noout", "--schema", standards("eml-2.2.0/eml.xsd"), f"{at}/eml.xml")


@check("darwin-core")
def the_archive_holds_every_line_and_its_terms_are_the_standards(folder, _):
    with tempfile.TemporaryDirectory() as at, zipfile.ZipFile(folder / "darwin-core.zip") as packed:
        packed.extractall(at)
        # the descriptor's schema is one of XML Schema 1.0 that names another by its address; terms are looked up by hand
        meta = ElementTree.parse(f"{at}/meta.xml").getroot()
        space = "{http://rs.tdwg.org/dwc/text/}"
        darwin = {line.strip() for line in open(SCHEMAS / "darwin-core-terms.txt")}
        humboldt = {line.strip() for line in open(SCHEMAS / "humboldt-terms.txt")}
        events = None
        for part in [meta.find(f"{space}core"), *meta.findall(f"{space}extension")]:
            with open(f"{at}/{part.find(f'{space}files/{space}location').text}", newline="") as file:
                heads, *rows = list(csv.reader(file))
            fields = part.findall(f"{space}field")
            assert len(heads) == len(fields) + 1, heads
            for field in fields:
                namespace, name = field.get("term").rsplit("/", 1)
                known = humboldt if namespace.endswith("/eco/terms") else darwin
                assert name in known, f"{name} is no term of {namespace}"
                assert heads[int(field.get("index"))] == name
            assert all(len(row) == len(heads) for row in rows)
            if events is None:
                events = {row[0]: dict(zip(heads, row)) for row in rows}
                assert len(events) == len(rows) == 9, len(rows)
            assert all(row[0] in events for row in rows)
        for event in events.values():
            withheld = event["locality"] == "Rim Draw"
            blurred = event["locality"] == "Salt Bench"
            assert bool(event["informationWithheld"]) == withheld and bool(event["decimalLatitude"]) != withheld
            assert bool(event["dataGeneralizations"]) == bool(event["coordinateUncertaintyInMeters"]) == blurred


@check("darwin-core")
def its_descriptor_is_valid(folder, _):
    with tempfile.TemporaryDirectory() as at, zipfile.ZipFile(folder / "darwin-core.zip") as packed:
        packed.extractall(at)
        schema = SCHEMAS / "tdwg_dwc_text.xsd"
        run("xmllint", "--nonet", "--noout", "--schema", str(schema), f"{at}/meta.xml")


def main():
    if sys.argv[1] == "--forms":
        print(*dict.fromkeys(form for form, _ in CHECKS))
        return 0
    out = Path(sys.argv[1])
    figures = json.loads((out / "assess.json").read_text())
    passed, failed = 0, 0
    for form, function in CHECKS:
        name = f"{form}: {function.__name__.replace('_', ' ')}"
        try:
            function(out / form, figures)
            passed += 1
            print(f"ok      {name}")
        except NotAtHand as error:
            print(f"NOT RUN {name}: {error}")
        except Exception as error:  # whatever a library raises, the check has failed
            failed += 1
            print(f"FAILED  {name}: {type(error).__name__}: {error}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


sys.exit(main())
