/** Where people and files put text. Each place has words of its own, so that a page shows whose they are. */
export const places = [
  "name of a file",
  "maker",
  "model",
  "serial",
  "job number",
  "complaint",
  "cause note",
  "correction",
  "technician",
  "authorization",
  "component",
  "part number",
  "part description",
  "distributor",
  "invoice",
  "invoice line",
  "test point",
  "other test point",
  "unit of a reading",
  "page of a sheet",
  "note of a reading",
  "fault code",
  "unit of a range",
  "condition of a range",
  "source of a range",
  "policy",
  "payer",
  "terms",
  "approver",
  "class",
  "labour class",
  "campaign",
  "bulletin",
  "caption",
  "replaced part",
  "newer part",
  "contract",
  "plan",
  "holder",
  "exchanged serial",
  "heading",
  "other heading",
  "cell",
  "word of a cell",
  "key",
  "invited",
  "complaint on the phone",
  "open job",
  "value by hand",
  "reason by hand",
  "proof of facts",
  "proof of a span",
  "proof of a join",
  "caption by hand",
  "reason to leave out",
  "new terms",
  "new approver",
  "reason of a fate",
  "name of nobody",
  "reason to forget",
  "override",
  "reference of a sending",
  "payer's own number",
  "payer's words",
  "note on a claim",
  "appeal",
  "payment",
  "heading of a list",
  "cell of a list",
  "remark",
  "claim of a list",
  "aside",
  "tag",
  "note on stock",
  "supplier",
  "note on an order",
  "new part",
  "name of a new part",
  "mark of a signal",
  "note for technicians",
  "source by hand",
  "why a range",
  "note for the desk",
] as const;

export type Place = (typeof places)[number];

/** What spreadsheets take for the beginning of a formula. */
const leads = ["=", "+", "-", "@"];

/** Leaves an attribute, a title, a field and a script, and makes an element that would run, where anything takes it for markup. */
const markup = `"'></title></textarea></script><img data-planted src=x onerror=planted()>`;

/** Where sixty characters at most are taken, and a name in a folder, in which there is no slash. */
const short: ReadonlySet<Place> = new Set(["serial", "open job", "name of a file"]);
const shortMarkup = `"><img data-planted src=x onerror=planted()>`;

/** What is written in each place. */
export const hostile = Object.fromEntries(
  places.map((place, index) => {
    const lead = leads[index % leads.length];
    return [place, `${lead}1+1 ${place} ${short.has(place) ? shortMarkup : markup}`];
  }),
) as Readonly<Record<Place, string>>; // made from all places

export function hostileFileName(name: string): string {
  return `${hostile["name of a file"]} ${name}`;
}

/** For addresses, whose notices quote forty characters at most. */
export const hostileAndShort = `"'></title><img data-planted src=x>`;
