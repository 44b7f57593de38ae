import { createReadStream } from "node:fs";
import { decodeBytes } from "./decode-bytes";
import type { SourceItem } from "./source-row";
import { RowSplitter } from "./split-rows";
import type { Encoding } from "./table-form";

/** Every row of a text file that is not blank, the header and what stands above it included; memory does not grow with the file. */
export async function* textRows(
  path: string,
  { encoding, delimiter }: { readonly encoding: Encoding; readonly delimiter: string },
): AsyncGenerator<SourceItem> {
  const splitter = new RowSplitter(delimiter);
  for await (const text of decodeBytes(createReadStream(path, { highWaterMark: 1 << 18 }), encoding)) {
    for (const item of splitter.push(text)) {
      yield item;
      if (item.kind === "problem") return;
    }
  }
  yield* splitter.end();
}
