// Run as a process of its own by the launcher's tests: asks for the server of a folder, says what it got, and then
// stays or leaves as told.
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";

async function askForServer(): Promise<void> {
  const [folder = "", then = "leave"] = process.argv.slice(2);
  const server = await ensureEmbeddedServer(folder);
  process.stdout.write(`${JSON.stringify({ url: server.url, started: server.started })}\n`);
  if (then === "stop") await server.stop();
  if (then === "stay") setInterval(() => {}, 60_000);
}

void askForServer();
