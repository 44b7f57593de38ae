/** How far a download of many packets is; told to the page that waits for it. */
export interface PacketRun {
  readonly done: number;
  readonly total: number;
}

/** On the process, since the route that makes a file and the route that tells of it are loaded apart. */
const place = Symbol.for("ohmsworth.packet-runs");
const most = 50;

function runs(): Map<string, PacketRun> {
  const holder = globalThis as { [place]?: Map<string, PacketRun> }; // this file's own property
  holder[place] ??= new Map();
  return holder[place];
}

/** Remembers the newest few: a page that asks for an older one is told that nothing is known. */
export function notePacketRun(id: string, run: PacketRun): void {
  const known = runs();
  known.delete(id);
  known.set(id, run);
  const [oldest] = known.keys();
  if (known.size > most && oldest !== undefined) known.delete(oldest);
}

export function packetRun(id: string): PacketRun | undefined {
  return runs().get(id);
}
