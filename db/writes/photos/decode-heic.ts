import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { mostPixels } from "./photo-limits";

export type DecodedHeic =
  | { readonly kind: "pixels"; readonly width: number; readonly height: number; readonly pixels: Uint8Array }
  | { readonly kind: "too many pixels"; readonly width: number; readonly height: number }
  | { readonly kind: "unreadable" };

const longestMilliseconds = 20_000;

/**
 * Pictures as phones keep them. The image library that reads all others leaves this one out, so another decoder does
 * it, in memory of its own and on a thread of its own: a hostile file can stop neither the process nor other readers.
 */
export async function decodeHeic(received: Buffer): Promise<DecodedHeic> {
  // From the folder the app is started in: a path found by the bundler would point into its own output.
  const worker = new Worker(join(process.cwd(), "db", "writes", "photos", "heic-worker.mjs"), {
    workerData: { received: new Uint8Array(received), mostPixels },
    resourceLimits: { maxOldGenerationSizeMb: 512 },
  });
  let timer: NodeJS.Timeout | undefined;
  try {
    return await new Promise<DecodedHeic>((resolve) => {
      timer = setTimeout(() => resolve({ kind: "unreadable" }), longestMilliseconds);
      worker.once("message", (decoded: DecodedHeic) => resolve(decoded)); // the worker sends nothing else
      worker.once("error", () => resolve({ kind: "unreadable" }));
      worker.once("exit", () => resolve({ kind: "unreadable" }));
    });
  } finally {
    clearTimeout(timer);
    await worker.terminate();
  }
}
