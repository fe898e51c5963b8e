"""Write CSV and XLSX files whose bytes depend on their cells alone."""

import csv
import io
import zipfile
from collections.abc import Iterable, Sequence
from xml.sax.saxutils import escape

Row = Sequence[str]

_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml"
_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_WRITTEN = (2026, 1, 1, 0, 0, 0)


def csv_bytes(rows: Iterable[Row], *, encoding: str = "utf-8", delimiter: str = ",") -> bytes:
    """Return the rows as a CSV file with the line ends of an office program (RFC 4180)."""
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=delimiter, lineterminator="\r\n").writerows(rows)
    return text.getvalue().encode(encoding)


def xlsx_bytes(rows: Sequence[Row], *, sheet: str, merged: Sequence[str] = ()) -> bytes:
    """Return one sheet of text cells as an XLSX file (ECMA-376); ``merged`` are ranges as ``A1:D1``.

    The archive is stored, not packed, and bears a fixed time: compression libraries differ in their bytes.
    """
    phrases = {text: place for place, text in enumerate(dict.fromkeys(t for row in rows for t in row if t))}
    parts = {
        "[Content_Types].xml": _content_types(),
        "_rels/.rels": _links(
            ("officeDocument", "xl/workbook.xml"), ("metadata/core-properties", "docProps/core.xml")
        ),
        "docProps/core.xml": _properties(),
        "xl/workbook.xml": _workbook(sheet),
        "xl/_rels/workbook.xml.rels": _links(
            ("worksheet", "worksheets/sheet1.xml"),
            ("styles", "styles.xml"),
            ("sharedStrings", "sharedStrings.xml"),
        ),
        "xl/styles.xml": _styles(),
        "xl/sharedStrings.xml": _phrases(phrases),
        "xl/worksheets/sheet1.xml": _sheet(rows, phrases, merged),
    }
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_STORED) as file:
        for name, body in parts.items():
            entry = zipfile.ZipInfo(name, date_time=_WRITTEN)
            entry.create_system = 3  # else the operating system of the day is written
            file.writestr(entry, _HEAD + body)
    return archive.getvalue()


def _column(index: int) -> str:
    letters = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def _sheet(rows: Sequence[Row], phrases: dict[str, int], merged: Sequence[str]) -> str:
    lines = []
    for number, row in enumerate(rows, start=1):
        cells = "".join(
            f'<c r="{_column(place)}{number}" t="s"><v>{phrases[text]}</v></c>'
            for place, text in enumerate(row)
            if text
        )
        lines.append(f'<row r="{number}">{cells}</row>')
    ranges = "".join(f'<mergeCell ref="{one}"/>' for one in merged)
    joined = f'<mergeCells count="{len(merged)}">{ranges}</mergeCells>' if merged else ""
    last = f"{_column(max(map(len, rows)) - 1)}{len(rows)}"
    return (
        f'<worksheet xmlns="{_MAIN}"><dimension ref="A1:{last}"/>'
        f"<sheetData>{''.join(lines)}</sheetData>{joined}</worksheet>"
    )


def _phrases(phrases: dict[str, int]) -> str:
    items = "".join(f'<si><t xml:space="preserve">{escape(text)}</t></si>' for text in phrases)
    return f'<sst xmlns="{_MAIN}" uniqueCount="{len(phrases)}">{items}</sst>'


def _workbook(sheet: str) -> str:
    return (
        f'<workbook xmlns="{_MAIN}" xmlns:r="{_OFFICE}"><sheets>'
        f'<sheet name="{escape(sheet)}" sheetId="1" r:id="rId1"/></sheets></workbook>'
    )


def _styles() -> str:
    return (
        f'<styleSheet xmlns="{_MAIN}"><fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts>'
        '<fills count="2"><fill><patternFill patternType="none"/></fill>'
        '<fill><patternFill patternType="gray125"/></fill></fills>'
        '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>'
        '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>'
        '<cellXfs count="1"><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>'
        '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
    )


def _links(*targets: tuple[str, str]) -> str:
    lines = "".join(
        f'<Relationship Id="rId{place}" Type="{_link_type(kind)}" Target="{target}"/>'
        for place, (kind, target) in enumerate(targets, start=1)
    )
    return f'<Relationships xmlns="{_PACKAGE}/relationships">{lines}</Relationships>'


def _link_type(kind: str) -> str:
    return f"{_PACKAGE}/relationships/{kind}" if "/" in kind else f"{_OFFICE}/{kind}"


def _content_types() -> str:
    kinds = {
        "/xl/workbook.xml": f"{_TYPE}.sheet.main+xml",
        "/xl/worksheets/sheet1.xml": f"{_TYPE}.worksheet+xml",
        "/xl/styles.xml": f"{_TYPE}.styles+xml",
        "/xl/sharedStrings.xml": f"{_TYPE}.sharedStrings+xml",
        "/docProps/core.xml": "application/vnd.openxmlformats-package.core-properties+xml",
    }
    parts = "".join(f'<Override PartName="{part}" ContentType="{kind}"/>' for part, kind in kinds.items())
    return (
        f'<Types xmlns="{_PACKAGE}/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f'<Default Extension="xml" ContentType="application/xml"/>{parts}</Types>'
    )


def _properties() -> str:
    return (
        f'<cp:coreProperties xmlns:cp="{_PACKAGE}/metadata/core-properties" '
        'xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" '
        'xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"><dc:creator>The records keeper</dc:creator>'
        '<dcterms:created xsi:type="dcterms:W3CDTF">2026-01-01T00:00:00Z</dcterms:created></cp:coreProperties>'
    )
