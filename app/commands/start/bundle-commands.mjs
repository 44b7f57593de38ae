import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import process from "node:process";
import { pathToFileURL } from "node:url";

/**
 * Writes each of these commands as one file of JavaScript: read from some hundred files and translated at every start, a
 * command needs three times as much processor time before its first line. Packages stay where they are, so the folder must
 * lie inside the project. The bundler is the one that tsx brings.
 */
export async function bundleCommands(sources, folder) {
  const { build } = createRequire(createRequire(import.meta.url).resolve("tsx/package.json"))("esbuild");
  const root = process.cwd();
  await build({
    entryPoints: sources.map((source) => ({ in: source, out: basename(source, ".ts") })),
    outdir: folder,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    packages: "external",
    alias: { "@": root },
    plugins: [atItsOwnPlace(root)],
    logLevel: "warning",
  });
}

/** A module that asks where it lies is told where its source lies: migrations are found beside it. */
const atItsOwnPlace = (root) => ({
  name: "at its own place",
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, ({ path }) => {
      const text = readFileSync(path, "utf8");
      if (!path.startsWith(join(root, "db")) || !text.includes("import.meta.url")) return undefined;
      return { contents: text.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href)), loader: "ts" };
    });
  },
});
