import { crc32, deflateRawSync } from "node:zlib";

export interface ZipPart {
  readonly name: string;
  /** Unfolded content. */
  readonly content: string | Uint8Array;
  /** Claims in the headers that are not true, or bytes folded beforehand. */
  readonly claimedBytes?: number;
  readonly folded?: Uint8Array;
  readonly crc?: number;
  readonly encrypted?: boolean;
}

/** An archive with exactly these headers, true or not. Source: PKWARE APPNOTE 6.3, 4.3.7, 4.3.12, 4.3.16. */
export function zipFile(parts: readonly ZipPart[]): Buffer {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let offset = 0;
  for (const part of parts) {
    const content = Buffer.from(part.content);
    const folded = Buffer.from(part.folded ?? deflateRawSync(content));
    const name = Buffer.from(part.name);
    const shared = Buffer.alloc(26);
    shared.writeUInt16LE(20, 0);
    shared.writeUInt16LE(part.encrypted === true ? 0x801 : 0x800, 2);
    shared.writeUInt16LE(8, 4);
    shared.writeUInt16LE(0x21, 8); // 1980-01-01
    shared.writeUInt32LE(part.crc ?? crc32(content), 10);
    shared.writeUInt32LE(folded.length, 14);
    shared.writeUInt32LE(part.claimedBytes ?? content.length, 18);
    shared.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from("PK\x03\x04"), shared, name, folded]);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(offset, 10);
    centrals.push(Buffer.concat([Buffer.from("PK\x01\x02\x14\0"), shared, place, name]));
    locals.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(centrals);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(parts.length, 4);
  end.writeUInt16LE(parts.length, 6);
  end.writeUInt32LE(central.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...locals, central, Buffer.from("PK\x05\x06"), end]);
}

const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const package_ = "http://schemas.openxmlformats.org/package/2006/relationships";
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** The parts of a workbook of one sheet, each of which may be replaced. */
export function workbookParts({
  rows = '<row r="1"><c r="A1" t="s"><v>0</v></c></row>',
  texts = "<si><t>Job</t></si>",
  workbookProperties = "",
}: {
  readonly rows?: string;
  readonly texts?: string;
  readonly workbookProperties?: string;
} = {}): readonly ZipPart[] {
  const list = (...entries: readonly (readonly [string, string])[]) =>
    `<Relationships xmlns="${package_}">${entries
      .map(([type, target], place) => `<Relationship Id="r${place}" Type="${relations}/${type}" Target="${target}"/>`)
      .join("")}</Relationships>`;
  return [
    { name: "[Content_Types].xml", content: "<Types/>" },
    { name: "_rels/.rels", content: list(["officeDocument", "xl/workbook.xml"]) },
    {
      name: "xl/workbook.xml",
      content: `<workbook xmlns="${main}" xmlns:r="${relations}"><workbookPr ${workbookProperties}/><sheets><sheet name="Jobs" sheetId="1" r:id="r0"/></sheets></workbook>`,
    },
    {
      name: "xl/_rels/workbook.xml.rels",
      content: list(
        ["worksheet", "worksheets/sheet1.xml"],
        ["sharedStrings", "sharedStrings.xml"],
        ["styles", "/xl/styles.xml"],
      ),
    },
    { name: "xl/sharedStrings.xml", content: `<sst xmlns="${main}">${texts}</sst>` },
    {
      name: "xl/styles.xml",
      content: `<styleSheet><numFmts><numFmt numFmtId="164" formatCode="dd.mm.yyyy"/><numFmt numFmtId="165" formatCode="000000"/><numFmt numFmtId="166" formatCode="[h]:mm"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="166"/><xf numFmtId="22"/></cellXfs></styleSheet>`,
    },
    {
      name: "xl/worksheets/sheet1.xml",
      content: `<worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`,
    },
  ];
}

/** The same parts with one of them replaced. */
export function withPart(parts: readonly ZipPart[], part: ZipPart): readonly ZipPart[] {
  return [...parts.filter(({ name }) => name !== part.name), part];
}
