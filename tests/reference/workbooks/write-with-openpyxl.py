# Writes the workbooks of this folder that come from a library. Run: python3 write-with-openpyxl.py <folder>
# openpyxl 3.1.5, Python 3; the workbooks beside this script were written on 2026-11-25.
import sys
from datetime import date, datetime, time, timedelta
from pathlib import Path

from openpyxl import Workbook
from openpyxl.utils.datetime import CALENDAR_MAC_1904

folder = Path(sys.argv[1])

HEADER = ["Job", "Serial", "Done", "Arrived", "Hours", "Labour", "Note", "Check"]


def rows():
    return [
        ["J-1", 812000000000, date(2024, 2, 29), datetime(2024, 2, 29, 14, 5), 1.1, timedelta(hours=26, minutes=30), "café ½ in, 120 °F, 5 Ω", True],
        ["J-2", "0081200", date(2023, 12, 31), datetime(2023, 12, 31, 0, 0), 0.30000000000000004, timedelta(minutes=90), "two\nlines", False],
        ["J-3", 417, date(1999, 1, 1), datetime(1999, 1, 1, 23, 59, 59), -3, timedelta(0), " spaced ", "#N/A"],
        ["J-4", "1-MAR", date(2024, 3, 1), time(9, 30), 1e-7, timedelta(hours=1), None, "=1+1"],
    ]


def fill(sheet):
    sheet.append(HEADER)
    for row in rows():
        sheet.append(row)
    for line in sheet.iter_rows(min_row=2):
        line[1].number_format = "0000000" if line[1].value == 417 else "General"
        line[2].number_format = "d-mmm" if line[1].value == "1-MAR" else "m/d/yyyy"
        line[3].number_format = "hh:mm" if line[0].value == "J-4" else "yyyy-mm-dd hh:mm"
        line[5].number_format = "[h]:mm"


for base in (1900, 1904):
    book = Workbook()
    if base == 1904:
        book.epoch = CALENDAR_MAC_1904
    fill(book.active)
    book.active.title = "Jobs"
    book.save(folder / f"library-{base}.xlsx")

book = Workbook()
book.active.title = "Notes"
book.active["A1"] = "Exported by the office"
jobs = book.create_sheet("Jobs")
jobs["A2"] = "Closed jobs"
for place, name in enumerate(["Job", "Model", "Closed"], start=1):
    jobs.cell(row=4, column=place, value=name)
for number in range(1, 31):
    jobs.append([f"J-{number}", f"M-{number % 3}", date(2024, 1, number)])
book.create_sheet("Blank")
book.save(folder / "library-sheets.xlsx")
