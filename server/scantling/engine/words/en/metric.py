"""Examples in hints and refusals, written as a house writes its lengths: 63 1/4, or 1607 mm.

A table of whole phrases and no arithmetic: an example is a round figure that a person there would meet. What a refusal
quotes of the text that was typed never comes through here, and what explains how feet and fractions are written stays.
"""

from collections.abc import Mapping
from types import MappingProxyType

# Longer phrases before those that stand in them.
EXAMPLES: Mapping[str, str] = MappingProxyType(
    {
        "63 1/4 or 5' 3 1/4\"": "1607 mm or 1.607 m",
        "63.25, or 63 1/4": "1606.5 mm",
        "63.25 or 63 1/4": "1606.5 mm",
        "63 1/4 / 2": "1607 mm / 2",
        "63 1/4 - 2": "1607 mm - 2 mm",
        "63 and 1/4": "1607 mm",
        "63 1/4": "1607 mm",
        "2 × (3 1/2)": "2 × (89 mm)",
        "wall 3 - 1/4": "wall 3 - 6 mm",
        "use in, ft, mm or m": "use mm, cm, m or in",
        "use in, ft, yd, mm, cm or m": "use mm, cm, m or in",
        "14 1/2, 30 1/2": "370 mm, 770 mm",
        "14 1/2, every 16": "370 mm, every 400 mm",
        "closer than 3 in": "closer than 76 mm",
        "1/4 in 48 top": "6 mm in 1200 mm top",
        "1/4 top": "6 mm top",
        "1/4 foot": "6 mm foot",
        "1/4 hollow at 48": "6 mm hollow at 1200 mm",
        "1/4 hump at 48": "6 mm hump at 1200 mm",
        "1/2 right": "12 mm right",
        "1/2 left": "12 mm left",
        "1/2 in a foot": "1 in 24",
        "24, 24, 34 1/4": "600 mm, 600 mm, 870 mm",
        "24 in along": "600 mm along",
        "24 in level": "610 mm level",
        "2 in up": "50 mm up",
        "-1/16": "-1.5 mm",
        "58 1/4 × 5 1/2": "1480 mm × 140 mm",
        "58 1/4, 3 1/4, 3": "1480 mm, 83 mm, 76 mm",
        "1/64 in, the finest mark of a tape": "0.4 mm",
        "Under an inch": "Under 25 mm",
        "so that inches are left": "so that millimeters are left",
        "such as 1/8": "such as 3 mm",
        "17/32": "13.5 mm",
    }
)

# So many packages, which are called otherwise there.
PACKAGES: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "so-many-filler.one": {"half-pint tub": "240-ml tub"},
        "so-many-filler.other": {"half-pint tub": "240-ml tub"},
        "so-many-tape.one": {"60-yard roll": "55-m roll"},
        "so-many-tape.other": {"60-yard roll": "55-m roll"},
        "so-many-paste.one": {"gallon": "3.8-L pail"},
        "so-many-paste.other": {"gallon": "3.8-L pail"},
    }
)
