import type { FileKind } from "@/lib/intake/file-kinds";
import { openSource } from "./staging/source-rows";

/** Which kind of file this is, by its own first row or its schema; undefined where it does not say. */
export async function kindOfFile(path: string, stated: FileKind | undefined): Promise<FileKind | undefined> {
  try {
    const source = await openSource(path, stated);
    if (!source.ok) return undefined;
    await source.close();
    return source.kind;
  } catch {
    return undefined; // a file that is not there, or cannot be opened, is reported when it is loaded
  }
}
