import { normalised } from "@/lib/domain/normalised";
import type { KnownThings } from "./known-things";
import { remembering } from "./remembering";

/** What to say beside a number that is not on file but close to some that are, and these, to choose from. */
export interface Offer {
  readonly note: string;
  readonly numbers: readonly string[];
}

const mostOffered = 3;

/** What is offered beside the cells of a column, never put in; undefined where nothing ever is. */
export function offering(column: string, known: KnownThings): ((text: string) => Offer | undefined) | undefined {
  switch (column) {
    case "serial":
      return (text) => offerSerial(normalised(text), known);
    case "model":
      return remembered((text) => offerModel(normalised(text), known));
    case "part_number":
      return (text) => offerPart(normalised(text), known);
    default:
      return undefined;
  }
}

/** Models repeat, and to look for longer ones takes a walk over all that are on file. */
function remembered(offer: (text: string) => Offer | undefined): (text: string) => Offer | undefined {
  const read = remembering((text) => ({ offer: offer(text) }));
  return (text) => read(text).offer;
}

function offerSerial(serial: string, { serials }: KnownThings): Offer | undefined {
  return serial === "" || serials.has(serial) ? undefined : alike("Serial", serials.lookAlikes(serial));
}

function offerModel(model: string, { models, modelsBeginning }: KnownThings): Offer | undefined {
  if (model === "" || models.has(model)) return undefined;
  return longerModel(modelsBeginning(model)) ?? alike("Model", models.lookAlikes(model));
}

function offerPart(part: string, { partReplacedBy }: KnownThings): Offer | undefined {
  const newer = part === "" ? undefined : partReplacedBy(part);
  if (newer === undefined) return undefined;
  return { note: `Superseded by ${newer}. Taken as it stands.`, numbers: [newer] };
}

function alike(noun: string, found: readonly string[]): Offer | undefined {
  if (found.length === 0) return undefined;
  const numbers = found.slice(0, mostOffered);
  const note = `${noun} ${numbers.join(" or ")} is on file and differs only in characters that look alike (O and 0, I and 1, S and 5, B and 8). Taken as it stands.`;
  return { note, numbers };
}

function longerModel(models: readonly string[]): Offer | undefined {
  if (models.length === 0) return undefined;
  const numbers = models.slice(0, mostOffered);
  return { note: `On file with a suffix: ${numbers.join(", ")}. Taken as it stands.`, numbers };
}
