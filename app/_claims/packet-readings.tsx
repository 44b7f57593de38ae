import type { ClaimPacket, PacketReading } from "@/lib/claims/packet";
import { formatOutcome } from "@/lib/format/format-reading";
import { ReadingGauge } from "../_charts/reading-gauge";
import { type Column, Table } from "../_ui/table";
import {
  expectedWords,
  liveCautions,
  meterModeNames,
  rangeSourceWords,
  readingOnRange,
  readingState,
  takenWords,
} from "./packet-words";

interface Props {
  readonly packet: ClaimPacket;
}

/** Every reading against its range, what was to be heeded while taking it, and the codes the machine gave. */
export function PacketReadings({ packet }: Props) {
  const { readings, faultCodes } = packet;
  return (
    <>
      {readings.length === 0 ? (
        <p>No readings were taken.</p>
      ) : (
        <Table
          caption="Readings of this job"
          captionHidden
          columns={columnsOf(packet)}
          rows={readings}
          rowKey={({ number }) => String(number)}
        />
      )}
      <h3>Cautions</h3>
      <ul>
        {liveCautions(packet).map(({ text, basis, mark }) => (
          <li key={text}>
            {text}{" "}
            <span className="soft">
              ({basis}; {mark})
            </span>
          </li>
        ))}
      </ul>
      <h3>Fault codes</h3>
      {faultCodes.length === 0 ? (
        <p>No fault code was read.</p>
      ) : (
        <ul>
          {faultCodes.map(({ code, reading }) => (
            <li key={reading}>
              <span className="figures">{code}</span>, reading {reading}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const columnsOf = (packet: ClaimPacket): readonly Column<PacketReading>[] => [
  {
    key: "check",
    head: "Check and points",
    cell: ({ number, check, points }) => <TwoLines first={`${number}. ${check}`} second={points} />,
  },
  {
    key: "meter",
    head: "Meter and state",
    cell: (reading) => <TwoLines first={meterModeNames[reading.mode]} second={readingState(reading)} />,
  },
  {
    key: "expected",
    head: "Expected, and its source",
    cell: (reading) => <TwoLines first={expectedWords(reading)} second={rangeSourceWords(reading) ?? ""} />,
  },
  {
    key: "found",
    head: "Found, and when",
    cell: (reading) => (
      <>
        <span className="figures">{formatOutcome(reading.outcome)}</span>
        <div className="soft small">{takenWords(reading, packet)}</div>
      </>
    ),
  },
  { key: "verdict", head: "Verdict", cell: (reading) => <Verdict reading={reading} /> },
];

function TwoLines({ first, second }: { readonly first: string; readonly second: string }) {
  return (
    <>
      {first}
      {second !== "" && <div className="soft small">{second}</div>}
    </>
  );
}

function Verdict({ reading }: { readonly reading: PacketReading }) {
  const onRange = readingOnRange(reading);
  if (onRange === undefined) return reading.verdictWords;
  const { value, expected } = onRange;
  return (
    <>
      {reading.verdictWords}
      <ReadingGauge outcome={{ kind: "number", value, unit: expected.unit }} expected={expected} />
    </>
  );
}
