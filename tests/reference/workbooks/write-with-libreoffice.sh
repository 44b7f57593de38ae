#!/bin/sh
# Writes the workbooks of this folder that come from LibreOffice, from the CSV file beside this script and from the
# library's workbook with other days. Run: sh write-with-libreoffice.sh <folder>
# LibreOffice 7.4.7.2 (Debian 12, libreoffice-calc-nogui); the workbooks beside this script were written on 2026-11-25.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
cp "$here/office.csv" "$work/office.csv"
cp "$here/library-1904.xlsx" "$work/office-1904.xlsx"
# Separator 44, quotation mark 34, UTF-8 (76), from line 1; column 2 as text, column 3 as year-month-day, the rest as it looks; English.
soffice --headless --convert-to xlsx:"Calc MS Excel 2007 XML" --infilter="CSV:44,34,76,1,1/1/2/2/3/5,1033,false,true" --outdir "$1" "$work/office.csv"
soffice --headless --convert-to xlsx:"Calc MS Excel 2007 XML" --outdir "$1" "$work/office-1904.xlsx"
soffice --headless --convert-to ods --outdir "$1" "$work/office.csv"
soffice --headless --convert-to xls:"MS Excel 97" --outdir "$1" "$work/office.csv"
rm -r "$work"
