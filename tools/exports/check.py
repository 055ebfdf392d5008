"""Exports against programs that we didn't write. Prints what it looked at, and 'N passed, N failed' at the end."""

import json
import sys
from pathlib import Path

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
    assert len(report.tasks) == 11, len(report.tasks)


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


def main():
    if sys.argv[1] == "--forms":
        print(*dict.fromkeys(form for form, _ in CHECKS))
        return 0
    out = Path(sys.argv[1])
    figures = json.loads((out / "assess.json").read_text())
    failed = 0
    for form, function in CHECKS:
        name = f"{form}: {function.__name__.replace('_', ' ')}"
        try:
            function(out / form, figures)
            print(f"ok      {name}")
        except Exception as error:  # whatever a library raises, the check has failed
            failed += 1
            print(f"FAILED  {name}: {type(error).__name__}: {error}")
    print(f"{len(CHECKS) - failed} passed, {failed} failed")
    return 1 if failed else 0


sys.exit(main())
