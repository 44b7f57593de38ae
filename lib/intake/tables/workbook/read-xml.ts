import { SaxesParser } from "saxes";
import { Unreadable } from "../../unreadable";
import { damaged } from "./archive-problems";

/** What is done with the elements of one part; names come without their prefix. */
export interface XmlHandler {
  readonly open?: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly text?: (text: string) => void;
  readonly close?: (name: string) => void;
}

/** Far beyond any tag or cell; a part that goes on for longer without one is not read to its end. */
const longestStretchBytes = 8_000_000;

/**
 * Reads one part, handing back after every piece of it, so that whoever asks can take what has been gathered.
 * A document type is refused, and with it every entity that it could declare or fetch.
 */
export async function* readXml(bytes: AsyncIterable<Buffer>, handler: XmlHandler): AsyncGenerator<void> {
  const parser = new SaxesParser({ position: false });
  let stretch = 0;
  parser.on("opentag", ({ name, attributes }) => {
    stretch = 0;
    handler.open?.(localName(name), attributes as Record<string, string>); // plain without the option xmlns
  });
  parser.on("closetag", ({ name }) => {
    stretch = 0;
    handler.close?.(localName(name));
  });
  if (handler.text !== undefined) parser.on("text", handler.text);
  parser.on("doctype", () => {
    throw new Unreadable({
      problem: "The workbook declares a document type, which workbooks do not have.",
      fix: "Do not open this file; ask whoever sent it for a CSV file.",
    });
  });
  parser.on("error", (error) => {
    throw damaged(new Error(`its XML is not well formed (${error.message.replace(/\.$/, "")})`));
  });
  let decoder: TextDecoder | undefined;
  for await (const chunk of bytes) {
    decoder ??= new TextDecoder(wideMark(chunk) ?? "utf-8");
    stretch += chunk.length;
    parser.write(decoder.decode(chunk, { stream: true }));
    if (stretch > longestStretchBytes) throw damaged(new Error("its XML goes on without an end"));
    yield;
  }
  parser.close();
  yield;
}

/** Reads a whole part for what its handler gathers. */
export async function readXmlWhole(bytes: AsyncIterable<Buffer>, handler: XmlHandler): Promise<void> {
  for await (const _ of readXml(bytes, handler));
}

/** XML is UTF-8 unless it begins with the mark of UTF-16. */
function wideMark(chunk: Buffer): string | undefined {
  if (chunk[0] === 0xff && chunk[1] === 0xfe) return "utf-16le";
  return chunk[0] === 0xfe && chunk[1] === 0xff ? "utf-16be" : undefined;
}

function localName(name: string): string {
  const colon = name.indexOf(":");
  return colon === -1 ? name : name.slice(colon + 1);
}
