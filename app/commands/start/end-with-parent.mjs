// Loaded into the web server before its own code: when the process that started it is killed outright, the line to it
// closes, and the server ends too instead of keeping the port. Servers under development fork a child of their own,
// which loads this too; its line leads to its own parent, and it must be left to wait for word on it.
import process from "node:process";

if (process.ppid === Number(process.env.OHMSWORTH_STARTED_BY)) {
  process.on("disconnect", () => process.exit(1));
  process.channel?.unref();
}
