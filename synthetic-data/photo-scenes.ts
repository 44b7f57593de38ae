// What each drawn picture shows, as the technician would have framed it.
import type { PhotoSubject } from "@/lib/domain/job";
import { box, disc, letters, line, pictureHeight, pictureWidth } from "./drawing";

export interface PhotoFacts {
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly soldOn: string;
  readonly visitedOn: string;
  readonly faultCode: string | undefined;
  readonly part:
    | { readonly number: string; readonly name: string; readonly invoice: string; readonly cost: string }
    | undefined;
  readonly failure: string;
}

export function photoScene(subject: PhotoSubject, facts: PhotoFacts): string {
  const scene = scenes[subject];
  if (scene === undefined) throw new RangeError(`subject: no drawing for ${subject}`);
  return scene(facts);
}

type Scene = (facts: PhotoFacts) => string;

const steel = box(0, 0, pictureWidth, pictureHeight, "#c9ced2") + line("M0 120H1200M0 700H1200", "#b4babf", 3);
const floor = box(0, 0, pictureWidth, pictureHeight, "#d8d2c6") + box(0, 620, pictureWidth, 280, "#a89f8d");
const bench = box(0, 0, pictureWidth, pictureHeight, "#8a7a63") + line("M0 300H1200M0 610H1200", "#7b6c57", 4);
const paper = (rows: readonly string[], title: string) =>
  bench +
  box(180, 50, 840, 770, "#fbfaf6", 'stroke="#cfcabd" stroke-width="3"') +
  letters(title, { x: 240, y: 100, height: 32 }) +
  rows.map((row, index) => letters(row, { x: 240, y: 210 + index * 74, height: 27 })).join("");

const impeller = (x: number, y: number, fill: string) =>
  disc(x, y, 118, "#39424a") +
  [0, 60, 120, 180, 240, 300]
    .map(
      (turn) =>
        `<rect x="${x - 13}" y="${y - 104}" width="26" height="92" rx="12" fill="${fill}" transform="rotate(${turn} ${x} ${y})"/>`,
    )
    .join("") +
  disc(x, y, 26, "#e0e4e6");

const board = (body: string) =>
  steel + box(150, 110, 900, 620, "#1f6b4a", 'rx="14" stroke="#12432e" stroke-width="8"') + body;
const copper = Array.from({ length: 11 }, (_, index) =>
  line(`M${210 + index * 75} 180V${260 + ((index * 53) % 170)}H${250 + index * 70}V650`, "#caa54a", 7),
).join("");

const scenes: Readonly<Partial<Record<PhotoSubject, Scene>>> = {
  plate: ({ maker, model, serial }) =>
    steel +
    box(150, 150, 900, 560, "#f4f5f3", 'rx="18" stroke="#7e868c" stroke-width="6"') +
    letters(maker, { x: 210, y: 200, height: 62 }) +
    letters(`Model  ${model}`, { x: 210, y: 330, height: 40 }) +
    letters(`Serial ${serial}`, { x: 210, y: 430, height: 40 }) +
    letters("120 V   60 Hz   12 A", { x: 210, y: 540, height: 34 }) +
    letters("Front-load washer", { x: 210, y: 620, height: 34 }),
  fault_code: ({ faultCode }) =>
    box(0, 0, pictureWidth, pictureHeight, "#2b3136") +
    box(220, 240, 760, 360, "#0b1210", 'rx="20" stroke="#4b545b" stroke-width="10"') +
    letters(faultCode ?? "----", { x: 400, y: 320, height: 200, colour: "#54f0c0", weight: 20 }) +
    letters("Service mode   stored code", { x: 330, y: 660, height: 30, colour: "#aab3b9" }),
  drain_path: () =>
    floor +
    box(120, 80, 960, 560, "#e9ebec", 'rx="16" stroke="#9aa2a8" stroke-width="6"') +
    disc(430, 360, 190, "#c4cacf", 'stroke="#8b949a" stroke-width="10"') +
    impeller(430, 360, "#b9c0c5") +
    box(700, 230, 300, 260, "#f7f8f8", 'rx="30" stroke="#8b949a" stroke-width="8"') +
    Array.from({ length: 6 }, (_, index) => line(`M${730 + index * 48} 260V460`, "#9aa2a8", 8)).join("") +
    letters("Trap and filter", { x: 620, y: 560, height: 26 }),
  foreign_object: () =>
    bench +
    disc(380, 430, 110, "#b98a4b", 'stroke="#8f6935" stroke-width="12"') +
    disc(380, 430, 78, "#c99b59") +
    line("M640 330L900 330Q940 330 940 370Q940 410 900 410L620 410", "#2c3338", 16) +
    letters("Coin and hair pin from the trap", { x: 150, y: 650, height: 28, colour: "#fbfaf6" }),
  kinked_hose: () =>
    floor +
    line("M120 160C380 160 420 200 430 330", "#5b646b", 74) +
    line("M430 330L640 300", "#5b646b", 34) +
    line("M640 300C700 420 760 540 1090 560", "#5b646b", 74) +
    line("M440 250L540 390M520 240L430 400", "#b03a2e", 10) +
    letters("Kink behind the machine", { x: 330, y: 690, height: 34 }),
  suds: () =>
    steel +
    disc(600, 420, 330, "#5d676e", 'stroke="#3f484e" stroke-width="24"') +
    disc(600, 420, 290, "#d7eef5") +
    Array.from({ length: 70 }, (_, index) =>
      disc(
        370 + ((index * 97) % 460),
        230 + ((index * 61) % 380),
        20 + ((index * 13) % 26),
        "#ffffff",
        'stroke="#b8d6e0" stroke-width="3" fill-opacity="0.85"',
      ),
    ).join("") +
    letters("Suds in drum and pump", { x: 370, y: 775, height: 30 }),
  failed_part: ({ part, failure }) =>
    bench +
    box(220, 170, 480, 420, "#2e363c", 'rx="36"') +
    impeller(460, 380, failure === "impeller_cracked" ? "#a0432f" : "#b9c0c5") +
    (failure === "impeller_cracked" ? line("M400 290L450 350L430 380L500 470", "#f2e6c8", 9) : "") +
    box(760, 300, 250, 180, "#e0e4e6", 'rx="12"') +
    line("M760 350H700M760 420H700", "#b5651d", 18) +
    letters(part?.name ?? "Part", { x: 240, y: 640, height: 36, colour: "#fbfaf6" }) +
    letters(failure.replaceAll("_", " "), { x: 240, y: 710, height: 30, colour: "#fbfaf6" }),
  part_labels: ({ part }) =>
    bench +
    ["Old", "New"]
      .map(
        (which, index) =>
          box(110 + index * 510, 200, 470, 400, "#fbfaf6", 'rx="8"') +
          letters(which, { x: 150 + index * 510, y: 240, height: 40 }) +
          letters(part?.number ?? "", { x: 150 + index * 510, y: 340, height: 44 }) +
          letters(part?.name ?? "", { x: 150 + index * 510, y: 430, height: 22 }),
      )
      .join(""),
  board_front: () =>
    board(
      box(230, 190, 150, 110, "#2d2d33") +
        box(430, 190, 150, 110, "#2d2d33") +
        box(650, 200, 260, 170, "#16181b") +
        disc(300, 520, 70, "#22262a") +
        disc(480, 520, 56, "#22262a") +
        box(620, 470, 340, 150, "#e8e2d0") +
        letters("J4 drain", { x: 650, y: 520, height: 34 }),
    ),
  board_back: () =>
    board(
      copper +
        Array.from({ length: 40 }, (_, index) =>
          disc(220 + ((index * 83) % 760), 170 + ((index * 59) % 500), 11, "#d6d9db"),
        ).join(""),
    ),
  connector: () =>
    steel +
    box(330, 250, 540, 300, "#f3efe2", 'rx="20" stroke="#b9b29c" stroke-width="8"') +
    Array.from({ length: 6 }, (_, index) => box(370 + index * 80, 330, 46, 120, "#565f66")).join("") +
    line("M430 550C430 680 360 720 300 800", "#2f5fa8", 18) +
    line("M590 550C600 640 620 660 640 690", "#b03a2e", 18) +
    line("M680 740C700 770 720 790 740 830", "#b03a2e", 18) +
    letters("Wire broken at the tub clamp", { x: 240, y: 150, height: 26 }),
  receipt: ({ maker, model, serial, soldOn }) =>
    paper(
      [`${maker} ${model}`, `Serial ${serial}`, `Date of sale ${soldOn}`, "Paid in full", "Delivery included"],
      "Lantern Lane Appliances",
    ),
  part_invoice: ({ part, visitedOn }) =>
    paper(
      [
        `Invoice ${part?.invoice ?? ""}`,
        `Line 1  ${part?.number ?? ""}`,
        part?.name ?? "",
        `Quantity 1   ${part?.cost ?? ""} USD`,
        `Before ${visitedOn}`,
      ],
      "Fenwater Parts",
    ),
  signature: ({ visitedOn }) =>
    paper(["Work done and tested", `Date ${visitedOn}`, "Time in 09:10  out 10:25"], "Customer") +
    line(
      "M300 640C360 520 400 520 420 640C440 720 480 560 520 600C560 640 560 700 620 640C660 600 700 680 780 620",
      "#1c3f8f",
      7,
    ),
};
