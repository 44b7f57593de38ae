import type { ClaimPacket, PacketReading } from "@/lib/claims/packet";
import { formatOutcome } from "@/lib/format/format-reading";
import {
  expectedWords,
  gaugeWords,
  liveCautions,
  meterModeNames,
  rangeSourceWords,
  readingOnRange,
  readingState,
  takenWords,
} from "../packet-words";
import { drawGauge, gaugeHeight } from "./draw-gauge";
import { say, sayHeading, sayList, styles } from "./say";
import type { Sheet } from "./sheet";
import { type Cell, type Column, drawTable } from "./table";

const columns: readonly Column[] = [
  { head: "No.", share: 0.05 },
  { head: "Check and points", share: 0.22 },
  { head: "Meter and state", share: 0.17 },
  { head: "Expected, and its source", share: 0.18 },
  { head: "Found, and when", share: 0.17 },
  { head: "Verdict", share: 0.21 },
];

export function drawReadings(sheet: Sheet, packet: ClaimPacket): void {
  const { readings, faultCodes } = packet;
  if (readings.length === 0) say(sheet, "No readings were taken.");
  else {
    drawTable(
      sheet,
      columns,
      readings.map((reading) => readingRow(sheet, packet, reading)),
    );
  }
  sayHeading(sheet, "Cautions");
  sayList(
    sheet,
    liveCautions(packet).map(({ text, basis, mark }) => `${text} (${basis}; ${mark})`),
    styles.small,
  );
  sayHeading(sheet, "Fault codes", styles.subheading, 30);
  if (faultCodes.length === 0) say(sheet, "No fault code was read.");
  sayList(
    sheet,
    faultCodes.map(({ code, reading }) => `${code}, reading ${reading}`),
  );
}

function readingRow(sheet: Sheet, packet: ClaimPacket, reading: PacketReading): readonly Cell[] {
  const onRange = readingOnRange(reading);
  const drawing = onRange && {
    height: gaugeHeight,
    alt: gaugeWords(reading),
    draw: (x: number, y: number, width: number) => drawGauge(sheet, onRange.expected, onRange.value, x, y, width),
  };
  return [
    { text: String(reading.number), style: styles.figures },
    { text: reading.check, note: reading.points === "" ? undefined : reading.points },
    { text: meterModeNames[reading.mode], note: readingState(reading) },
    { text: expectedWords(reading), note: rangeSourceWords(reading) },
    { text: formatOutcome(reading.outcome), style: styles.smallBold, note: takenWords(reading, packet) },
    { text: reading.verdictWords, drawing },
  ];
}
