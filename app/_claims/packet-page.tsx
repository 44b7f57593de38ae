import type { ReactNode } from "react";
import type { ClaimPacket, SectionKey } from "@/lib/claims/packet";
import { formatCounted } from "@/lib/format/format-count";
import { DefinitionList } from "../_ui/definition-list";
import { Plate } from "../_ui/plate";
import { Tag } from "../_ui/tag";
import styles from "./packet-page.module.css";
import { PacketPhotos } from "./packet-photos";
import { PacketReadings } from "./packet-readings";
import {
  PacketCoverage,
  PacketDocuments,
  PacketHistory,
  PacketManifest,
  PacketMoney,
  PacketStory,
} from "./packet-sections";
import { claimFacts, claimName, dateFacts, sectionHolds, sectionLine, unitFacts } from "./packet-words";

interface Props {
  readonly packet: ClaimPacket;
  readonly photoHref: (id: string) => string;
  /** Where the page hangs; on the screen only. */
  readonly above?: ReactNode;
}

/** The packet on screen and on paper, section by section as in the PDF. */
export function PacketPage({ packet, photoHref, above }: Props) {
  const bodies: Readonly<Record<SectionKey, ReactNode>> = {
    coverage: <PacketCoverage packet={packet} />,
    story: <PacketStory packet={packet} />,
    readings: <PacketReadings packet={packet} />,
    money: <PacketMoney packet={packet} />,
    photos: <PacketPhotos packet={packet} photoHref={photoHref} />,
    documents: <PacketDocuments packet={packet} photoHref={photoHref} />,
    history: <PacketHistory packet={packet} />,
    manifest: <PacketManifest packet={packet} />,
  };
  return (
    <article className={styles.packet}>
      {above !== undefined && <p className="no-print small">{above}</p>}
      <Cover packet={packet} />
      {packet.index.map((section) => (
        <section key={section.key} id={section.key} className={styles.section} aria-labelledby={`${section.key}-title`}>
          <p className={styles.place}>{sectionLine(packet, section)}</p>
          <h2 id={`${section.key}-title`}>{section.title}</h2>
          <div className="stack">{bodies[section.key]}</div>
        </section>
      ))}
    </article>
  );
}

function Cover({ packet }: { readonly packet: ClaimPacket }) {
  const { cover, index, notSupplied } = packet;
  const unit = unitFacts(packet).map(({ term, detail }) => ({
    term,
    detail: term === "Serial" && cover.serial !== undefined ? <Tag>{cover.serial}</Tag> : detail,
  }));
  const dates = dateFacts(packet);
  return (
    <div className="stack">
      <p className="soft">Warranty claim to {cover.payer}</p>
      <h1>{claimName(cover)}</h1>
      <Plate title="Unit">
        <DefinitionList items={unit} />
      </Plate>
      <DefinitionList items={claimFacts(packet)} />
      <h2>Dates on file</h2>
      {dates.length === 0 ? <p>No dates are on file.</p> : <DefinitionList items={dates} />}
      <nav aria-labelledby="contents-title" className="stack-tight">
        <h2 id="contents-title">Contents</h2>
        <ol>
          {index.map((section) => (
            <li key={section.key}>
              <a href={`#${section.key}`}>{section.title}</a>
              {withComma(sectionHolds(section))}
            </li>
          ))}
        </ol>
      </nav>
      <p>
        {notSupplied.length === 0
          ? "Nothing that this claim needs is missing."
          : `Not supplied: ${formatCounted(notSupplied.length, "thing")}, named under Manifest.`}
      </p>
    </div>
  );
}

function withComma(words: string | undefined): string {
  return words === undefined ? "" : `, ${words}`;
}
