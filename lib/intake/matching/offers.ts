import { normalised } from "@/lib/domain/normalised";
import type { KnownThings } from "./known-things";
import { lookAlikes } from "./look-alikes";

/** What to say beside a number that is not on file but close to one that is. It is only offered. */
export function offerFor(column: string, text: string, known: KnownThings): string | undefined {
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
      return newer === undefined ? undefined : `Superseded by ${newer}. Taken as it stands.`;
    }
    default:
      return undefined;
  }
}

function alike(noun: string, found: readonly string[]): string | undefined {
  if (found.length === 0) return undefined;
  return `${noun} ${found.slice(0, 3).join(" or ")} is on file and differs only in characters that look alike (O and 0, I and 1, S and 5, B and 8). Taken as it stands.`;
}

function longerModel(models: readonly string[]): string | undefined {
  if (models.length === 0) return undefined;
  return `On file with a suffix: ${models.slice(0, 3).join(", ")}. Taken as it stands.`;
}
