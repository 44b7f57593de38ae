import { copyInto } from "@/db/copy-into";

type Chunk = string | Uint8Array;

/**
 * Copies chunks, each of whole rows, over two connections, so that the server reads them with two of its processes.
 * Whatever fails ends both; where it is the chunks themselves, no row has arrived.
 */
export async function copySideBySide(
  target: Parameters<typeof copyInto>[0],
  chunks: AsyncGenerator<Chunk>,
  limits: { readonly timeoutSeconds: number },
): Promise<void> {
  let failed: { readonly error: unknown } | undefined;
  const fail = (error: unknown): never => {
    failed ??= { error };
    throw failed.error;
  };
  async function* share(): AsyncGenerator<Chunk> {
    for (;;) {
      const next = await chunks.next().catch(fail);
      if (failed !== undefined) throw failed.error; // a generator that has failed ends quietly for whoever asks next
      if (next.done === true) return;
      yield next.value;
    }
  }
  await Promise.allSettled([1, 2].map(() => copyInto(target, share(), limits).catch(fail)));
  if (failed === undefined) return;
  await chunks.return(undefined);
  throw failed.error;
}
