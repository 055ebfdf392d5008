"""Compares stored check values with those worked out anew: python compare.py STORED ANEW FILE …"""

import pathlib
import sys

# Other versions of the programs round differently; another version's random numbers may differ altogether;
# and a summit that is searched for is found as exactly as its search ends.
RELATIVE = {"bca by chance": 0.1, "bca draws": 1e-9, "bca interval": 1e-9, "mixed": 1e-4, "sources": 1e-4}
OTHERWISE = 1e-9


def read(path):
    rows = [[cell.strip() for cell in line.split("|")] for line in path.read_text().splitlines()]
    return {(kind, given): [float(x) for x in figures.split()] for kind, given, figures in rows}


stored, anew = (pathlib.Path(folder) for folder in sys.argv[1:3])
compared, unlike = 0, []
for name in sys.argv[3:]:
    before, after = read(stored / name), read(anew / name)
    unlike += [f"{name}: only in one of the two: {key}" for key in before.keys() ^ after.keys()]
    for key in before.keys() & after.keys():
        if len(before[key]) != len(after[key]):
            unlike.append(f"{name}: not as many figures: {key}")
        for old, new in zip(before[key], after[key]):
            compared += 1
            if not abs(new - old) <= RELATIVE.get(key[0], OTHERWISE) * abs(old):
                unlike.append(f"{name}: {key}: stored {old!r}, now {new!r}")
print(f"{compared} figures compared, {len(unlike)} differences")
print("\n".join(unlike), end="\n" if unlike else "")
sys.exit(1 if unlike or not compared else 0)
