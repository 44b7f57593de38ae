// Loaded into the web server before its own code: when the process that started it is killed outright, the line to it
// closes, and the server ends too instead of keeping the port.
import process from "node:process";

process.on("disconnect", () => process.exit(1));
process.channel?.unref();
