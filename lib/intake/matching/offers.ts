import { normalised } from "@/lib/domain/normalised";
import type { KnownThings } from "./known-things";
import { lookAlikes } from "./look-alikes";

/** What to say beside a number that is not on file but close to some that are, and these, to choose from. */
export interface Offer {
  readonly note: string;
  readonly numbers: readonly string[];
}

const mostOffered = 3;

/** It is only offered, never put in. */
export function offerFor(column: string, text: string, known: KnownThings): Offer | undefined {
  const plain = normalised(text);
  if (plain === "") return undefined;
  switch (column) {
    case "serial":
      return known.hasSerial(plain) ? undefined : alike("Serial", lookAlikes(text, known.hasSerial));
    case "model":
      return known.hasModel(plain)
        ? undefined
        : (longerModel(known.modelsBeginning(plain)) ?? alike("Model", lookAlikes(text, known.hasModel)));
    case "part_number": {
      const newer = known.partReplacedBy(plain);
      return newer === undefined
        ? undefined
        : { note: `Superseded by ${newer}. Taken as it stands.`, numbers: [newer] };
    }
    default:
      return undefined;
  }
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
