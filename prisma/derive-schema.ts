/** Where the second head of the models is committed, below `prisma/`. */
export const SECOND_SCHEMA = "postgresql/schema.prisma";

const HEADING = `// Derived from prisma/schema.prisma by prisma/make-migration.mjs. Do not edit: change that file, and run
// that script. A test fails when the two differ (tests/src/store/two-providers.test.ts).

`;

/** What differs between the two heads; everything else is the same text. */
const DIFFERENCES = [
  [
    'output              = "../src/store/generated"',
    'output              = "../../src/store/generated/postgresql"',
  ],
  ['provider = "sqlite"', 'provider = "postgresql"'],
] as const;

/**
 * The PostgreSQL head of the models, from the text of `prisma/schema.prisma`. Throws when that text does
 * not have, once, what is to be replaced.
 */
export function deriveSecondSchema(schema: string): string {
  const derived = DIFFERENCES.reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`schema.prisma must say once: ${from}`);
    return text.replace(from, to);
  }, schema);
  return `${HEADING}${derived}`;
}

/**
 * The SQL of a PostgreSQL migration with every text column ordered by its bytes, as in SQLite: whatever
 * the language of the server, lists come in the same order on both, and keys are compared fast.
 */
export function orderedByBytes(sql: string): string {
  return sql.replace(/(?<= )TEXT\b(?! COLLATE)/gu, 'TEXT COLLATE "C"');
}
