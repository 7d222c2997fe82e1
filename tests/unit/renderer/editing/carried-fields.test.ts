import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTicketFile } from '../../../../main/files/ticket-file.ts';
import { deleteParts, renamePart } from '../../../../renderer/editing/add-parts.ts';
import { placeBoard } from '../../../../renderer/editing/board-frame.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';

type Schema = { [key: string]: unknown };
type Found = { places: string[]; names: string[] };

/**
 * Every field of the published schema that says a place or a direction on the board, or names a part. Names of parts
 * are told by their field's name, as far as they follow the house's: `refdes`, `toRefdes`, `target`.
 */
function fieldsOf(format: 'board' | 'plan'): Found {
  const root: Schema = JSON.parse(readFileSync(`sample-boards/${format}.schema.json`, 'utf8'));
  const places = new Set<string>();
  const names = new Set<string>();
  const walk = (schema: Schema | undefined, path: string, seen: readonly string[]): void => {
    if (!schema || typeof schema !== 'object') return;
    const link = schema.$ref as string | undefined;
    if (link !== undefined) {
      if (seen.includes(link)) return;
      const at = link.split('/').slice(1);
      walk(
        at.reduce<Schema>((inner, key) => inner[key] as Schema, root),
        path,
        [...seen, link],
      );
    }
    for (const key of ['anyOf', 'oneOf', 'allOf'])
      for (const one of (schema[key] as Schema[] | undefined) ?? []) walk(one, path, seen);
    walk(schema.items as Schema | undefined, `${path}[]`, seen);
    const properties = (schema.properties as Record<string, Schema> | undefined) ?? {};
    if (properties.x && properties.y) places.add(path);
    for (const [key, value] of Object.entries(properties)) {
      if (/turn|heading|bulge/i.test(key)) places.add(`${path}.${key}`);
      if (/refdes|^target$/i.test(key)) names.add(`${path}.${key}`);
      walk(value, `${path}.${key}`, seen);
    }
  };
  walk(root, format, []);
  return { places: [...places].sort(), names: [...names].sort() };
}

test('every field with a place or a direction is known to the frame: a new one goes into board-frame.ts, then here', () => {
  expect(fieldsOf('board').places).toEqual([
    'board.covers[]',
    'board.covers[].turn',
    'board.cutouts[][]',
    'board.cutouts[][].bulge',
    'board.fiducials[]',
    'board.outline[]',
    'board.outline[].bulge',
    'board.parts[]',
    'board.parts[].pin1',
    'board.parts[].turn',
    'board.photos[].pairs[].board',
    // Pixels of the picture: they stay.
    'board.photos[].pairs[].photo',
  ]);
  expect(fieldsOf('plan').places).toEqual([
    // How the board lies in the clamp, not where something lies on it: it stays.
    'plan.clampedTurnDeg',
    'plan.heatRuns[].segments[].nozzleCentre',
    'plan.sites[].area',
    'plan.sites[].area.turnDeg',
    'plan.station.nozzle.headingDeg',
    'plan.station.nozzle.turnDeg',
    'plan.station.preheater.centre',
    'plan.station.preheater.sensor',
    'plan.tags[]',
  ]);
});

test('every field that names a part is known: a new one goes into renamePart and deleteParts, then here', () => {
  expect(fieldsOf('board').names).toEqual([
    'board.parts[].refdes',
    'board.photos[].pairs[].refdes',
    'board.straps[].positions[].refdes',
  ]);
  expect(fieldsOf('plan').names).toEqual([
    'plan.sites[].target',
    'plan.straps.ticked[].refdes',
    'plan.tags[].refdes',
    'plan.tags[].toRefdes',
  ]);
});

/** A sample ticket with a matched photo, a preheater that stands somewhere, and a nozzle that is led. */
function filled(): TicketDocument {
  const file = 'sample-boards/greenhouse-gateway.hmticket';
  const read = readTicketFile(new Uint8Array(readFileSync(file)), file);
  if (!read.ok) throw new Error(read.problem.code);
  const { board, plan } = read.value.document;
  const at = board.parts.find(({ refdes }) => refdes === 'U1');
  if (!at) throw new Error('the sample has no U1');
  const pair = { id: 'pair-1', photo: { x: 10, y: 20 }, board: { x: at.x, y: at.y }, anchor: 'part', refdes: 'U1' };
  const photo = { id: 'photo-1', side: 'top', pairs: [pair] };
  return {
    board: { ...board, photos: [photo] as unknown as typeof board.photos },
    plan: {
      ...plan,
      station: {
        ...plan.station,
        preheater: { ...plan.station.preheater, centre: { x: 30, y: 40 }, sensor: { x: 31, y: 42 } },
      },
    },
  };
}

/** Paths of every text that is exactly the name. */
function naming(value: unknown, name: string, path = ''): string[] {
  if (value === name) return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => naming(inner, name, `${path}/${key}`));
}

test('no text is left that names a renamed or a deleted part', () => {
  const before = filled();
  expect(naming(before, 'U1').length).toBeGreaterThan(4);
  expect(naming(renamePart(before, 'U1', 'ZZ9'), 'U1')).toEqual([]);
  expect(naming(renamePart(before, 'U1', 'ZZ9'), 'ZZ9')).toHaveLength(naming(before, 'U1').length);
  const bare = { ...before, board: { ...before.board, straps: [] } };
  expect(naming(deleteParts(bare, ['U1']), 'U1')).toEqual([]);
});

/** Everything with x and y that lies on the board, by path; pixels of photos and a part's own axes are left out. */
function placesOf(value: unknown, path = ''): Map<string, { x: number; y: number }> {
  const found = new Map<string, { x: number; y: number }>();
  if (typeof value !== 'object' || value === null || /pairs\/\d+\/photo$|\/pin1$/.test(path)) return found;
  const point = value as { x?: unknown; y?: unknown };
  if (typeof point.x === 'number' && typeof point.y === 'number') found.set(path, { x: point.x, y: point.y });
  for (const [key, inner] of Object.entries(value))
    for (const [at, place] of placesOf(inner, `${path}/${key}`)) found.set(at, place);
  return found;
}

test('a moved origin takes every place along that the document holds', () => {
  const before = filled();
  const after = placesOf(placeBoard(before, { mirror: false, quarters: 0, by: { x: 100, y: -50 } }));
  const places = placesOf(before);
  expect(places.size).toBeGreaterThan(200);
  for (const [path, { x, y }] of places) {
    expect(after.get(path)?.x, path).toBeCloseTo(x + 100, 6);
    expect(after.get(path)?.y, path).toBeCloseTo(y - 50, 6);
  }
});
