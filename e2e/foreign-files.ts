// A file as an old office program writes it: semicolons, Windows-1252, decimal comma, days with the month's name,
// a title above the header, the header again in the middle, totals and a note at the end.
import type { SentFile } from "./csv-files";

const header = [
  "Job No",
  "Status",
  "Make",
  "Model No",
  "Ser #",
  "Product",
  "Call date",
  "Date completed",
  "Customer complaint",
  "Failed part",
  "Fault found",
  "Labour hrs",
  "Part No",
  "Part description",
  "Qty",
  "Unit price",
  "Technician",
] as const;

type Row = Readonly<Partial<Record<(typeof header)[number], string>>>;

const washer: Row = {
  Status: "Closed",
  Make: "Brackenhall",
  "Model No": "BHF27-W3",
  Product: "FL washer",
  "Call date": "2-Apr-26",
  "Customer complaint": "Won’t drain – café laundry, 40 °C",
  "Failed part": "pump",
  "Fault found": "component",
  "Labour hrs": "1,5",
  "Part No": "BH-077",
  "Part description": "Drain pump",
  Qty: "1",
  "Unit price": "41,50",
  Technician: "René",
};

export const dirtyRecords = 10;

/** Ten records, of which the ninth has a day that no calendar has. */
const records = (letter: string): readonly Row[] =>
  Array.from({ length: dirtyRecords }, (_, index) => ({
    ...washer,
    "Job No": `${letter}-${4401 + index}`,
    "Ser #": `B2511370${String(index + 1).padStart(4, "0")}`,
    "Date completed": index === 8 ? "31-Feb-26" : `${index + 11}-Apr-26`,
    ...(index === 2 ? { "Failed part": "brd" } : {}),
  }));

/** @param letter begins the job numbers, so that two files can be told apart */
export function dirtyFile(name: string, letter = "X"): SentFile {
  const cells = (row: Row) => header.map((column) => row[column] ?? "").join(";");
  const lines = [
    "Service export;;;;;;;;;;;;;;;;",
    header.join(";"),
    ...records(letter).slice(0, 5).map(cells),
    header.join(";"),
    ...records(letter).slice(5).map(cells),
    cells({ "Job No": "Total", "Labour hrs": "15,0", Qty: "10", "Unit price": "415,00" }),
    "Printed 4-May-26 by the office;;;;;;;;;;;;;;;;",
  ];
  return { name, mimeType: "text/csv", buffer: windows1252(`${lines.join("\r\n")}\r\n`) };
}

/** The characters above 127 that these files use, by the WHATWG table of windows-1252. */
const bytes: ReadonlyMap<string, number> = new Map([
  ["–", 0x96],
  ["’", 0x92],
]);

function windows1252(text: string): Buffer {
  return Buffer.from(Array.from(text, (character) => bytes.get(character) ?? character.charCodeAt(0)));
}
