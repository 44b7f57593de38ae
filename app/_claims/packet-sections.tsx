// The sections of the packet page that are words and tables, in the order in which they stand.
import type { ClaimDeduction, ClaimLine } from "@/lib/claims/claim";
import type { ClaimPacket } from "@/lib/claims/packet";
import { formatCount } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { formatReadingNumber } from "@/lib/format/format-reading";
import { DefinitionList } from "../_ui/definition-list";
import { type Column, Table } from "../_ui/table";
import styles from "./packet-page.module.css";
import {
  asWritten,
  evidenceNote,
  fileWords,
  invoiceWords,
  itemStateNames,
  lineName,
  storyFacts,
  takenWords,
} from "./packet-words";

interface Props {
  readonly packet: ClaimPacket;
}

export function PacketCoverage({ packet: { coverage, cover } }: Props) {
  return (
    <>
      <Lines lines={coverage.items.map(({ sentence }) => sentence)} />
      <Lines title="Arithmetic" lines={coverage.arithmetic} />
      <Lines title="Where the wording decides" lines={coverage.boundary} />
      <Lines title="Other cover looked at" lines={coverage.others} />
      <Lines title="Law" lines={coverage.statutory} />
      <DefinitionList items={[{ term: "Rule source", detail: cover.policySource }]} />
      <p className="soft">{coverage.defer}</p>
    </>
  );
}

export function PacketStory({ packet }: Props) {
  const { story, evidence } = packet;
  const written = [
    ["Complaint", story.complaint],
    ["Cause", story.cause],
    ["Correction", story.correction],
  ] as const;
  return (
    <>
      {written.map(([name, text]) => (
        <div key={name}>
          <h3>{name}, as written</h3>
          <p className={styles.written}>{asWritten(text)}</p>
        </div>
      ))}
      <h3>As coded</h3>
      <DefinitionList items={storyFacts(packet)} />
      <h3>Evidence</h3>
      <p>{evidence.verdict}</p>
      {evidence.items.length > 0 && (
        <Table
          caption="What the claim needs to show"
          columns={[
            { key: "label", head: "What is needed", cell: ({ label, mark }) => `${label} (${mark})` },
            { key: "state", head: "State", cell: ({ state }) => <strong>{itemStateNames[state]}</strong> },
            { key: "where", head: "Where it is, or what would supply it", cell: (item) => evidenceNote(packet, item) },
          ]}
          rows={evidence.items}
          rowKey={({ key }) => key}
        />
      )}
    </>
  );
}

export function PacketMoney({ packet: { money } }: Props) {
  const { currency, lines, deductions, totalCents } = money;
  const rows = [...lines.map(lineRow), ...deductions.map(deductionRow)];
  const total: MoneyRow = { key: "total", item: "Total", part: "", quantity: "", basis: "", cents: totalCents };
  const columns: readonly Column<MoneyRow>[] = [
    { key: "item", head: "Item", cell: ({ item }) => item },
    { key: "part", head: "Part and invoice", cell: ({ part }) => part },
    { key: "quantity", head: "Quantity", kind: "number", cell: ({ quantity }) => quantity },
    { key: "basis", head: "How the amount came about", cell: ({ basis }) => basis },
    { key: "amount", head: "Amount", kind: "number", cell: ({ cents }) => formatMoney({ cents, currency }) },
  ];
  return (
    <Table
      caption="What is claimed"
      captionHidden
      columns={columns}
      rows={rows}
      closing={[total]}
      rowKey={({ key }) => key}
    />
  );
}

interface MoneyRow {
  readonly key: string;
  readonly item: string;
  readonly part: string;
  readonly quantity: string;
  readonly basis: string;
  readonly cents: number;
}

function lineRow(line: ClaimLine, index: number): MoneyRow {
  const { description, partNumber, quantity, basis, cents } = line;
  const part = [partNumber, invoiceWords(line)].filter((words) => words !== undefined).join(", ");
  const item = `${lineName(line)}: ${description}`;
  return { key: `line ${index}`, item, part, quantity: formatReadingNumber(quantity), basis, cents };
}

function deductionRow({ kind, basis, cents }: ClaimDeduction): MoneyRow {
  return { key: kind, item: "Taken off", part: "", quantity: "", basis, cents: -Math.abs(cents) };
}

export function PacketDocuments({ packet, photoHref }: Props & { readonly photoHref: (id: string) => string }) {
  const { documents } = packet;
  if (documents.length === 0) return <p>No documents are part of this packet.</p>;
  return (
    <ul>
      {documents.map((file) => (
        <li key={file.id}>
          <a href={photoHref(file.id)}>{file.name}</a>. {fileWords(file)}, {takenWords(file, packet)}.
        </li>
      ))}
    </ul>
  );
}

export function PacketHistory({ packet: { history } }: Props) {
  if (history.length === 0) return <p>No earlier jobs on this unit are on file.</p>;
  return (
    <Table
      caption="Earlier jobs on this unit"
      captionHidden
      columns={[
        { key: "job", head: "Job", cell: ({ jobNumber }) => <span className="figures">{jobNumber}</span> },
        { key: "completed", head: "Completed", cell: ({ completedOn }) => formatDay(completedOn) },
        { key: "symptom", head: "Symptom", cell: ({ symptom }) => symptom ?? "Not coded" },
        { key: "component", head: "Component", cell: ({ component }) => component ?? "Not coded" },
        { key: "cause", head: "Cause", cell: ({ causeName }) => causeName },
      ]}
      rows={history}
      rowKey={({ jobNumber }) => jobNumber}
    />
  );
}

export function PacketManifest({ packet: { manifest, notSupplied } }: Props) {
  return (
    <>
      <Lines title="What is missing" lines={notSupplied} />
      {notSupplied.length === 0 && <p>Nothing that this claim needs is missing.</p>}
      <h3>Files</h3>
      {manifest.length === 0 ? (
        <p>No files belong to this packet.</p>
      ) : (
        <Table
          caption="Files with their SHA-256"
          captionHidden
          columns={[
            { key: "name", head: "File", cell: ({ name }) => name },
            { key: "bytes", head: "Bytes", kind: "number", cell: ({ bytes }) => formatCount(bytes) },
            { key: "hash", head: "SHA-256", cell: ({ sha256 }) => <span className={styles.hash}>{sha256}</span> },
          ]}
          rows={manifest}
          rowKey={({ name }) => name}
        />
      )}
    </>
  );
}

function Lines({ title, lines }: { readonly title?: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      {title !== undefined && <h3>{title}</h3>}
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
