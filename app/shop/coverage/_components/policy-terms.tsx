import { type Column, Table } from "@/app/_ui/table";
import { termInWords } from "@/lib/calendar/day-words";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import { startEvents } from "@/lib/domain/policy-start";
import type { CoverTerm } from "@/lib/domain/policy-terms";
import { componentWords, subjectWords } from "../policy-words";

interface Row {
  readonly subject: string;
  readonly members: string;
  readonly lines: readonly CoverTerm[];
}

/** The terms as a table: what is covered against what is paid. */
export function PolicyTerms({ policy }: { readonly policy: Policy }) {
  return (
    <Table
      caption="How long each pay item is covered"
      columns={columns}
      rows={rowsOf(policy)}
      rowKey={(row) => row.subject}
    />
  );
}

const itemHeads: Readonly<Record<PayItem, string>> = {
  parts: "Parts",
  labour: "Labour",
  trip: "Trip",
  diagnosis: "Diagnosis",
};

const columns: readonly Column<Row>[] = [
  { key: "subject", head: "Covers", cell: ({ subject }) => subject },
  ...payItems.map(
    (item): Column<Row> => ({ key: item, head: itemHeads[item], cell: ({ lines }) => lengthOf(lines, item) }),
  ),
  { key: "members", head: "Which parts", wideOnly: true, cell: ({ members }) => members || "–" },
];

/** "5 years"; a line with a start or a counting of its own says so. */
function lengthOf(lines: readonly CoverTerm[], item: PayItem): string {
  const words = lines
    .filter(({ pays }) => pays.includes(item))
    .map(({ term, from, anchorDay }) =>
      [
        termInWords(term),
        from === undefined ? "" : `from ${startEvents[from.event].toLowerCase()}`,
        anchorDay === undefined ? "" : anchorDay === "include" ? "(first day counted)" : "(first day not counted)",
      ]
        .filter((part) => part !== "")
        .join(" "),
    );
  return words.length === 0 ? "–" : words.join("; ");
}

function rowsOf(policy: Policy): readonly Row[] {
  const rows = new Map<string, CoverTerm[]>();
  for (const line of policy.terms) {
    const subject = subjectWords(line.covers, policy);
    rows.set(subject, [...(rows.get(subject) ?? []), line]);
  }
  return [...rows].map(([subject, lines]) => {
    const [first] = lines;
    const key = first?.covers.kind === "class" ? first.covers.class : undefined;
    const members = policy.classes.find((entry) => entry.key === key)?.members ?? [];
    return { subject, lines, members: componentWords(members) };
  });
}
