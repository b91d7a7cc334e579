"""The sheets that there are, by the name that the command line has for them."""

from collections.abc import Mapping
from types import MappingProxyType

from reviewer.reporting.sheets.assembly import ASSEMBLY
from reviewer.reporting.sheets.cutting import CUTTING
from reviewer.reporting.sheets.inspection import INSPECTION
from reviewer.reporting.sheets.load_test import LOAD_TEST
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.setting_out import SETTING_OUT
from reviewer.reporting.sheets.weight import WEIGHT

MAKERS: Mapping[str, Maker] = MappingProxyType(
    {
        maker.name: maker
        for maker in (
            CUTTING,
            SETTING_OUT,
            ASSEMBLY,
            INSPECTION,
            LOAD_TEST,
            WEIGHT,
        )
    }
)  # fmt: skip
