// Generates the Prisma clients, one for each database, without fetching anything. `prisma generate`
// looks for a schema engine it does not use here (the query compiler is WebAssembly), so it is pointed
// at an executable that exists. Only here: with the variable set, `prisma db push` and `migrate`
// silently do nothing.
import { spawnSync } from "node:child_process";
import { rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";

const cli = createRequire(import.meta.url).resolve("prisma/build/index.js");

const here = fileURLToPath(new URL("..", import.meta.url));
// The second client lies in a folder within the first, which making the first would leave half empty.
rmSync(`${here}src/store/generated/postgresql`, { recursive: true, force: true });

// It reads the nearest tsconfig.json above what it writes. The project's own is built on packages that an
// installation without development dependencies lacks.
// So for as long as this takes a plain one lies nearer (the folder itself must hold nothing but clients).
const nearest = `${here}src/store/tsconfig.json`;
writeFileSync(nearest, '{ "compilerOptions": { "module": "nodenext" } }\n');
process.on("exit", () => rmSync(nearest, { force: true }));

for (const schema of ["prisma/schema.prisma", "prisma/postgresql/schema.prisma"]) {
  const done = spawnSync(process.execPath, [cli, "generate", "--schema", schema], {
    cwd: here,
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: "1",
      CHECKPOINT_DISABLE: "1",
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  if (done.status !== 0) {
    // Quiet when all is well: what it says on both channels is shown only when it failed.
    process.stderr.write(`${done.stdout}${done.stderr}${done.error ?? ""}\n`);
    process.exit(done.status ?? 1);
  }
}
