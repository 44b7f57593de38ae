import type { FileKind } from "@/lib/intake/file-kinds";
import type { Staged, StagedKind, StagedRows } from "./staged-kind";

/** The rows of one kind that a file holds. */
export interface StagedPart {
  readonly staged: Staged;
  readonly kind: StagedKind;
}

/** A file in staging. A row of somebody's own file can hold rows of several kinds, which share one fate. */
export interface StagedFile {
  /** What the file is loaded as; its records give the rows their fate. */
  readonly kind: FileKind;
  /** In the order in which they build on each other. */
  readonly parts: readonly StagedPart[];
  /** The rows of the file as such; undefined for a file in our own columns, where each is one record. */
  readonly rows: StagedRows | undefined;
}

export const stagedRowColumns = [
  "row integer not null",
  "print text",
  "cells jsonb",
  "source jsonb",
  "problems jsonb",
  "reason text",
  "notes jsonb",
  "fate text",
] as const;
