import { expect, it } from 'vitest';
import { strapLayer } from '../../../../renderer/canvas/layers/straps.ts';
import { project } from '../../../../renderer/canvas/view/projection.ts';
import { jumpers, position, reel, strapPart, strapTicket } from '../../../support/straps.ts';
import { modelOf, sceneOf } from './sample.ts';

const parts = [
  strapPart('R1', '10k'),
  strapPart('R2', '10k -', { x: 20 }),
  strapPart('R3', '4k7 -', { x: 30 }),
  strapPart('R4', '10k', { x: 40 }),
];
const group = jumpers('G', [position('R1'), position('R2'), position('R3', '4k7'), position('R4')], { new: '0110' });

function linesOf(wanted: Record<string, string>, side: 'top' | 'bottom' = 'top') {
  const { board, plan } = strapTicket(parts, [group], wanted, [reel('4k7')]);
  const scene = sceneOf({ ...modelOf(board, { straps: plan.straps }), shownSide: side }, { side });
  const lines = strapLayer.marks(scene).flatMap((mark) => (mark.kind === 'line' ? [mark] : []));
  return { scene, ink: lines.filter((line) => line.stroke.colour === scene.theme.ink) };
}

it('draws an arrow from where a part stands to where it goes, a cross where one comes off, a plus where one is added', () => {
  const { scene, ink } = linesOf({ G: 'new' });
  const at = (x: number) => project(scene.projection, { x, y: 10 });
  const [from, to] = [at(10), at(20)];
  const shaft = ink.find((line) => line.points[0] === from.x && line.points[1] === from.y);
  expect(shaft?.points.slice(-2)).toEqual([expect.closeTo(to.x, 6), expect.closeTo(to.y, 6)]);
  const around = (x: number) =>
    ink.filter((line) => line.points.length === 4 && Math.abs((line.points[0] + line.points[2]) / 2 - at(x).x) < 1e-6);
  const upright = (line: { points: number[] }) =>
    line.points[0] === line.points[2] || line.points[1] === line.points[3];
  expect(around(30).map(upright)).toEqual([true, true]);
  expect(around(40).map(upright)).toEqual([false, false]);
});

it('draws nothing without a wish, nor on the other side', () => {
  expect(linesOf({}).ink).toEqual([]);
  expect(linesOf({ G: 'new' }, 'bottom').ink).toEqual([]);
});
