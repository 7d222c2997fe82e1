import { describe, expect, test } from 'vitest';
import { type ImportedBoard, importBoard } from '../../main/document/imports/import-board.ts';
import type { Side } from '../../shared-types/geometry.ts';
import type { PhotoFitKind } from '../../shared-types/photo.ts';
import { fitPhoto, type PhotoFit, type PlacePair } from '../../shared-types/rules/photo-fit.ts';
import { suspectPairs } from '../../shared-types/rules/photo-suspects.ts';
import { mapPoint } from '../../shared-types/rules/plane-maps.ts';
import { boardFolder, filesOf } from '../documents/imports/boards-folder.ts';
import { verification } from '../support/verification/record.ts';
import places from './photo/outside-places.json' with { type: 'json' };

/** Photos of real boards against their placements; the places on the photos were read by eye, never by this program. */
type BoardName = 'butterstick' | 'ulx3s' | 'kvision';
const FITTED = 10;

const imported = new Map<BoardName, ImportedBoard | null>();
function boardOf(name: BoardName): ImportedBoard | null {
  if (!imported.has(name)) {
    const folder = boardFolder(name);
    const result = folder ? importBoard(filesOf(folder)) : null;
    if (result && !result.ok) throw new Error(result.problem.code);
    imported.set(name, result?.value ?? null);
  }
  return imported.get(name) ?? null;
}

/** Pairs of photo place (pixels) and placement (mm) in the committed order; null: the outside board is not here. */
function pairsOf(name: BoardName, side: Side): (PlacePair & { refdes: string })[] | null {
  const found = boardOf(name);
  const listed = (places[name] as Partial<Record<Side, Record<string, number[]>>>)[side];
  if (!found || !listed) return null;
  return Object.entries(listed).map(([refdes, [x, y]]) => {
    const part = found.board.parts.find((one) => one.refdes === refdes);
    if (!part || part.side !== side) throw new Error(`no part ${refdes} on the ${side}`);
    return { refdes, photo: { x, y }, board: { x: part.x, y: part.y } };
  });
}

function fitted(pairs: PlacePair[], side: Side, kind: PhotoFitKind | null = null): PhotoFit {
  const result = fitPhoto(pairs, side, kind);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.fit;
}

function report(name: string, pairs: PlacePair[], side: Side, rest: PlacePair[], leftOutLimitMm: number): PhotoFit {
  const best = fitted(pairs, side);
  const off = rest.map(({ photo, board }) => {
    const at = mapPoint(best.toBoard, photo);
    return Math.hypot(at.x - board.x, at.y - board.y);
  });
  const verify = verification({
    ...{ topic: 'Photo fits', item: 'photo', problem: 'Photos of real boards, places read by eye' },
    source: 'open-hardware boards with their placement files (outside the project)',
  });
  verify.below(`${name}, ${pairs.length} pairs: left-out RMS`, 'mm', best.leftOutRmsMm ?? Number.NaN, leftOutLimitMm);
  if (off.length > 0) verify.below(`${name}: ${off.length} further parts, worst`, 'mm', Math.max(...off), 0.4);
  return best;
}

describe('butterstick: near-orthographic photos of the exact revision', () => {
  test.each(['top', 'bottom'] as const)(
    '%s: leave-one-out RMS of ten pairs below 0.4 mm, with the usual map and with the plain ones',
    (side) => {
      const all = pairsOf('butterstick', side);
      if (!all) return;
      const pairs = all.slice(0, FITTED);
      const fit = report(`butterstick ${side}`, pairs, side, all.slice(FITTED), 0.15);
      expect(fit.kind).toBe('projective');
      expect(fit.turnedOver).toBe(false);
      for (const kind of ['similarity', 'affine'] as const)
        expect(fitted(pairs, side, kind).leftOutRmsMm).toBeLessThan(0.4);
      // 80 mm of board fill some 1850 of 2048 pixels: about 23 pixels a mm.
      expect(1 / fit.mmPerPixel).toBeGreaterThan(22);
      expect(1 / fit.mmPerPixel).toBeLessThan(25);
      expect(suspectPairs(pairs, side, 'projective')).toEqual([]);
    },
  );

  test('the bottom photo taken for the top is told: its map turns over', () => {
    const all = pairsOf('butterstick', 'bottom');
    if (!all) return;
    expect(fitted(all.slice(0, FITTED), 'top').turnedOver).toBe(true);
  });

  test('two parts exchanged are pointed out', () => {
    const all = pairsOf('butterstick', 'top');
    if (!all) return;
    const pairs = all.slice(0, FITTED).map((pair) => ({ ...pair }));
    [pairs[0].board, pairs[1].board] = [pairs[1].board, pairs[0].board];
    const told = suspectPairs(pairs, 'top', 'projective').map(({ index }) => index);
    expect(told).toEqual(expect.arrayContaining([0, 1]));
  });
});

test('ulx3s: a photo of an earlier revision lies within 0.4 mm', () => {
  const all = pairsOf('ulx3s', 'top');
  if (!all) return;
  report('ulx3s top', all.slice(0, FITTED), 'top', all.slice(FITTED), 0.25);
});

test('kvision: a photo from an angle needs the projective map, and then lies within 0.4 mm', () => {
  const pairs = pairsOf('kvision', 'top');
  if (!pairs) return;
  const fit = report('kvision top, from an angle', pairs, 'top', [], 0.25);
  expect(fit.kind).toBe('projective');
  // Seen from an angle, the plain maps miss by millimetres.
  expect(fitted(pairs, 'top', 'affine').leftOutRmsMm).toBeGreaterThan(1.5);
});
