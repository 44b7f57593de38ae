import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    /** For what tests write; removed when all have run. */
    temporaryFolder: string;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-tests-"));
  project.provide("temporaryFolder", folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
