import process from "node:process";

/** Numbers of the program's own, words of the program's own, times: never what a person typed or a file held. */
export type LogValue = string | number | boolean | undefined;

export interface LogEntry extends Readonly<Record<string, LogValue>> {
  readonly level: "info" | "error";
  readonly what: string;
}

/** One line of JSON on the standard output, or on the error output for a failure. */
export function logLine(entry: LogEntry): void {
  const line = JSON.stringify({ at: new Date().toISOString(), ...entry });
  (entry.level === "error" ? process.stderr : process.stdout).write(`${line}\n`);
}
