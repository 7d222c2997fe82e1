import { fail, type Result, succeed } from '../../../shared-types/problem.ts';

/** One step of a format: turns a document of version `from` into one of version `from + 1`. */
export type Migration = { from: number; migrate: (document: Record<string, unknown>) => Record<string, unknown> };

/** A format that the program reads: its name, current version, and the steps that lead there. */
export type Format = { name: string; version: number; migrations: readonly Migration[] };

/**
 * Brings a parsed document to the current version of its format, step by step.
 * Errors: wrong-format, newer-version, migration-failed. The given document is not changed.
 */
export function migrate(document: unknown, format: Format, file: string): Result<Record<string, unknown>> {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    return fail('wrong-format', { file, detail: { expected: format.name } });
  }
  let current = document as Record<string, unknown>;
  if (current.format !== format.name)
    return fail('wrong-format', { file, detail: { expected: format.name, found: named(current.format) } });
  const version = current.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return fail('invalid-field', { file, where: 'version', detail: { reason: 'is not a whole number from 1' } });
  }
  if (version > format.version)
    return fail('newer-version', { file, detail: { found: version, known: format.version } });
  for (let step = version; step < format.version; step++) {
    const migration = format.migrations.find((candidate) => candidate.from === step);
    if (!migration) return fail('migration-failed', { file, detail: { reason: `no step from version ${step}` } });
    current = { ...migration.migrate(structuredClone(current)), version: step + 1 };
  }
  return succeed(current);
}

const named = (format: unknown): string =>
  typeof format === 'string' ? format.slice(0, 60) : 'a file without a format name';
