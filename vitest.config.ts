import { defineConfig } from "vitest/config";

// Two projects: the pure core needs no isolation (no module state, no module mocks), which makes it
// several times faster; the shell runs isolated because it opens files, sockets and databases.
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "shared",
          include: ["tests/shared/**/*.test.ts", "tests/standards/**/*.test.ts"],
          isolate: false,
        },
      },
      {
        test: {
          name: "shell",
          include: ["tests/{commands,src,discord-server,faults}/**/*.test.ts"],
          // A busy machine takes its time over starting a bot; a test that hangs still ends.
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
