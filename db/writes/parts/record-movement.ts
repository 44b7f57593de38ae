import type { Day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import type { Transaction } from "../../database-types";
import {
  appendMovements,
  type Entered,
  lockStock,
  type NewMovement,
  type StockLevel,
  stockLevel,
} from "./append-movements";
import { onceInStock, type StockAnswer } from "./once-in-stock";

/** What happened to pieces of one part, as somebody enters it. */
export type StockEntry =
  /** So many lie there, whatever the ledger said. */
  | { readonly kind: "count"; readonly place: string; readonly counted: number }
  | { readonly kind: "receipt" | "return" | "scrap"; readonly place: string; readonly pieces: number }
  | {
      readonly kind: "reserve" | "release";
      readonly place: string;
      readonly pieces: number;
      readonly jobNumber: string;
    }
  | { readonly kind: "move"; readonly place: string; readonly to: string; readonly pieces: number };

export interface MovementRequest extends Entered {
  readonly partNumber: string;
  readonly entry: StockEntry;
  readonly happenedOn: Day;
  readonly note: string;
}

/** Enters one thing that happened to stock. What would leave fewer than none is refused with what the ledger has. */
export async function recordMovement(request: MovementRequest): Promise<StockAnswer> {
  const { partNumber, entry, happenedOn, note } = request;
  return await onceInStock("stock", request, [partNumber, entry, happenedOn, note], (tx) => enter(tx, request));
}

async function enter(tx: Transaction, request: MovementRequest): Promise<StockAnswer> {
  const partKey = normalised(request.partNumber);
  if (partKey === "") return { kind: "refused", sentence: "A part number needs a letter or a digit." };
  await lockStock(tx, [partKey]);
  const level = await stockLevel(tx, partKey, request.entry.place);
  const refusal = refusalOf(request.entry, level);
  if (refusal !== undefined) return refusal;
  const shared = { partKey, partNumber: request.partNumber, happenedOn: request.happenedOn, note: request.note };
  await appendMovements(
    tx,
    changes(request.entry, level).map((change) => ({ ...shared, ...change })),
    request,
  );
  return { kind: "done", sentence: doneWords(request.entry, await stockLevel(tx, partKey, request.entry.place)) };
}

function refusalOf(entry: StockEntry, level: StockLevel): StockAnswer | undefined {
  const where = placeWords(entry.place);
  const wrong = (field: string, sentence: string): StockAnswer => ({ kind: "refused", field, sentence });
  const pieces = entry.kind === "count" ? entry.counted : entry.pieces;
  if (!Number.isSafeInteger(pieces) || pieces < 0 || pieces > 1_000_000 || (pieces === 0 && entry.kind !== "count"))
    return wrong(
      "pieces",
      `${pieces} is no number of pieces; enter a whole number from ${entry.kind === "count" ? 0 : 1} to 1,000,000.`,
    );
  const free = level.onHand - level.reserved;
  switch (entry.kind) {
    case "count":
    case "receipt":
    case "return":
      return undefined;
    case "scrap":
      if (pieces <= level.onHand) return undefined;
      return wrong(
        "pieces",
        `The ledger has ${level.onHand} ${where}, so ${pieces} cannot be scrapped. Count what lies there first.`,
      );
    case "move":
      if (entry.to === entry.place) return wrong("to", `It lies ${where} already. Choose another place.`);
      if (pieces <= level.onHand) return undefined;
      return wrong(
        "pieces",
        `The ledger has ${level.onHand} ${where}, so ${pieces} cannot leave it. Count what lies there first.`,
      );
    case "reserve":
      if (pieces <= free) return undefined;
      return wrong(
        "pieces",
        `${Math.max(0, free)} ${where} are not put aside yet, so ${pieces} more cannot be. Put them on the order list.`,
      );
    case "release":
      if (pieces <= level.reserved) return undefined;
      return wrong("pieces", `${level.reserved} ${where} are put aside, so ${pieces} cannot be set free.`);
  }
}

type Change = Pick<NewMovement, "place" | "kind" | "quantity" | "reserved"> & { readonly note?: string };

function changes(entry: StockEntry, level: StockLevel): readonly Change[] {
  const { kind, place } = entry;
  switch (entry.kind) {
    case "count":
      return [{ kind, place, quantity: entry.counted - level.onHand, reserved: 0 }];
    case "receipt":
    case "return":
      return [{ kind, place, quantity: entry.pieces, reserved: 0 }];
    case "scrap":
      return [{ kind, place, quantity: -entry.pieces, reserved: 0 }];
    case "reserve":
      return [{ kind, place, quantity: 0, reserved: entry.pieces, note: `for job ${entry.jobNumber}` }];
    case "release":
      return [{ kind, place, quantity: 0, reserved: -entry.pieces, note: `of job ${entry.jobNumber}` }];
    case "move":
      return [
        { kind, place, quantity: -entry.pieces, reserved: 0 },
        { kind, place: entry.to, quantity: entry.pieces, reserved: 0 },
      ];
  }
}

function doneWords(entry: StockEntry, { onHand, reserved }: StockLevel): string {
  const aside = reserved > 0 ? `, ${reserved} of them put aside` : "";
  return `Entered. The ledger now has ${onHand} ${placeWords(entry.place)}${aside}.`;
}

function placeWords(place: string): string {
  return place === "" ? "on the shelf" : `in ${place}’s truck`;
}
