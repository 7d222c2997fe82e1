import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from '@tracespace/parser';
import { plot } from '@tracespace/plotter';
import { unzipSync } from 'fflate';
import { afterAll, describe, expect, test } from 'vitest';
import { objectBox } from '../../../main/document/imports/gerber/extents.ts';
import { readGerber } from '../../../main/document/imports/gerber/read-gerber.ts';
import { EMPTY_BOX, joinBoxes } from '../../../main/document/imports/plane.ts';
import { boardFolder } from './boards-folder.ts';

/** Our reader held against a general-purpose parser and plotter that none of us wrote, layer by layer. */
interface Layer {
  readonly name: string;
  readonly text: string;
}

interface Figures {
  readonly flashes: number;
  readonly contours: number;
  readonly strokes: number;
  readonly box: readonly number[];
}

const BOARDS = [
  'thunderscope',
  'ulx3s',
  'butterstick',
  'fomu',
  'protel-panel',
  'debug-adapter',
  'limesdr-usb',
  'kvision',
];
const LAYER = /\.(g[a-z0-9]{2}|gbr)$/i;

function layersOf(board: string): Layer[] {
  const folder = boardFolder(board);
  if (!folder) return [];
  const decoder = new TextDecoder('latin1');
  return readdirSync(folder).flatMap((name): Layer[] => {
    const bytes = new Uint8Array(readFileSync(join(folder, name)));
    if (name.endsWith('.zip')) {
      const members = unzipSync(bytes, { filter: (member) => LAYER.test(member.name) });
      return Object.entries(members).map(([member, content]) => ({ name: member, text: decoder.decode(content) }));
    }
    return LAYER.test(name) ? [{ name, text: decoder.decode(bytes) }] : [];
  });
}

function examples(): Layer[] {
  const folder = boardFolder('gerber-spec-examples');
  if (!folder) return [];
  return readdirSync(folder).flatMap((section) => {
    const file = join(folder, section, 'source.grb');
    return existsSync(file) ? [{ name: section, text: readFileSync(file, 'latin1') }] : [];
  });
}

function ours(text: string): Figures {
  const result = readGerber(text);
  if (!result.ok) throw new Error(result.failure.reason);
  const { objects } = result.image;
  const count = (kind: string) => objects.filter((object) => object.kind === kind).length;
  const contours = objects.flatMap((object) => (object.kind === 'region' ? object.contours : [])).length;
  // Their box holds clear objects too.
  const { minX, minY, maxX, maxY } = objects.map(objectBox).reduce(joinBoxes, EMPTY_BOX);
  return { flashes: count('flash'), strokes: count('stroke'), contours, box: [minX, minY, maxX, maxY] };
}

function theirs(text: string): Figures {
  const tree = parse(text);
  const image = plot(tree);
  const figures = { flashes: 0, strokes: 0 };
  let region = false;
  for (const node of tree.children) {
    if (node.type === 'regionMode') region = node.region;
    if (node.type !== 'graphic') continue;
    if (node.graphic === 'shape') figures.flashes++;
    if (node.graphic === 'segment' && !region) figures.strokes++;
  }
  const contours = image.children.filter(({ type }) => type === 'imageRegion').length;
  const scale = image.units === 'in' ? 25.4 : 1;
  return { ...figures, contours, box: image.size.map((value) => value * scale) };
}

/** Blocks (AB), scaling (LS), and a file without a unit are beyond that parser: gerber-examples.test.ts has them by hand. */
const BEYOND = ['4.9.1', '4.9.6', '4.10.4.7', '4.11.4'];

const rows: string[] = [];
afterAll(() => {
  if (rows.length > 0) console.log(['flashes, strokes, contours of regions: ours = theirs', ...rows].join('\n'));
});

function compare({ name, text }: Layer): void {
  const [a, b] = [ours(text), theirs(text)];
  expect({ ...a, box: [] }, name).toEqual({ ...b, box: [] });
  const empty = a.flashes + a.strokes + a.contours === 0;
  for (const [index, value] of a.box.entries()) {
    if (!empty) expect(Math.abs(value - b.box[index]), name).toBeLessThan(0.001);
  }
  rows.push(`${name}: ${a.flashes}, ${a.strokes}, ${a.contours}`);
}

describe('object counts and bounding boxes agree with a general-purpose parser', () => {
  test.each(BOARDS)('layers of %s', (board) => {
    for (const layer of layersOf(board)) compare(layer);
  });

  const sections = examples().filter(({ name }) => !BEYOND.includes(name));
  (sections.length > 0 ? test.each(sections) : test.skip.each([{ name: 'none here' }]))(
    'specification, section $name',
    (layer) => {
      compare(layer as Layer);
    },
  );
});
