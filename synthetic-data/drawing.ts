import { strokeLetters } from "./stroke-letters";

export const pictureWidth = 1200;
export const pictureHeight = 900;

export interface Lettering {
  readonly x: number;
  readonly y: number;
  /** Height of a capital in pixels; the width of a letter is two thirds of it. */
  readonly height: number;
  readonly colour?: string;
  readonly weight?: number;
}

/** One line of text as strokes. Letters without a glyph are left as a gap; case is lost. */
export function letters(text: string, { x, y, height, colour = "#1d2328", weight = height / 9 }: Lettering): string {
  const unit = height / 6;
  const strokes = [...text.toUpperCase()].flatMap((letter, index) => {
    const left = x + index * 6 * unit;
    return (strokeLetters[letter] ?? "").split("|").flatMap((stroke) => {
      if (stroke === "") return [];
      const points = stroke
        .split(" ")
        .map((point) => `${round(left + Number(point[0]) * unit)} ${round(y + Number(point[1]) * unit)}`);
      return [`M${points.join("L")}`];
    });
  });
  return `<path d="${strokes.join("")}" fill="none" stroke="${colour}" stroke-width="${round(weight)}" stroke-linecap="round" stroke-linejoin="round"/>`;
}

export function box(x: number, y: number, width: number, height: number, fill: string, more = ""): string {
  return `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}" ${more}/>`;
}

export function disc(x: number, y: number, radius: number, fill: string, more = ""): string {
  return `<circle cx="${x}" cy="${y}" r="${radius}" fill="${fill}" ${more}/>`;
}

export function line(path: string, colour: string, width: number): string {
  return `<path d="${path}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"/>`;
}

/** A whole picture: scene, job number, and the words that say what it is. */
export function picture(scene: string, jobNumber: string): string {
  const strip = `${box(0, 840, pictureWidth, 60, "#20282e")}${letters(`${jobNumber}   drawn for the demo, not a photo`, { x: 30, y: 858, height: 24, colour: "#e8ecee" })}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="960" height="720" viewBox="0 0 ${pictureWidth} ${pictureHeight}">${scene}${strip}</svg>`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
