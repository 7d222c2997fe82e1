import { expect, test } from 'vitest';
import { setLayerCount } from '../../../../renderer/editing/board-data.ts';
import { addRun, duplicateRun, setRunSite } from '../../../../renderer/editing/heat-runs.ts';
import { confirmClass, setOwnLimits } from '../../../../renderer/editing/parts.ts';
import { addSegmentAfter, removeSegment } from '../../../../renderer/editing/segments.ts';
import { addSiteAt, addSiteOn, moveSiteArea, removeSite, targetIn } from '../../../../renderer/editing/sites.ts';
import { setNozzle, setNozzleKind } from '../../../../renderer/editing/station.ts';
import { moveTag, removeTagKind, setTag, tagsOf, toggleTag } from '../../../../renderer/editing/tags.ts';
import { addWatchPoint, watchParts, watchPointsOf } from '../../../../renderer/editing/watch-points.ts';
import { smallDocument } from './sample-document.ts';

const orderOf = (document: ReturnType<typeof smallDocument>) =>
  document.plan.tags
    .filter((tag) => tag.kind !== 'watchPoint')
    .toSorted((a, b) => (a.order ?? 0) - (b.order ?? 0))
    .map((tag) => `${tag.order} ${tag.kind} ${tag.refdes}`);

test('a site on a part brings its tag and three heat runs', () => {
  const next = addSiteOn(smallDocument(), 'U1');
  expect(next.plan.sites[0]).toMatchObject({ target: 'U1', area: { x: 40, y: 30, lengthMm: 14, widthMm: 14 } });
  expect(next.plan.heatRuns.map((run) => run.kind)).toEqual(['removal', 'site-preparation', 'installation']);
  expect(tagsOf(next, 'U1').map((tag) => tag.kind)).toEqual(['replace']);
  expect(addSiteOn(next, 'U1')).toBe(next);
});

test('a second site on the same side joins the heat runs with gas of its own, before the board cools', () => {
  const next = addSiteOn(addSiteOn(smallDocument(), 'U1'), 'U2');
  expect(next.plan.heatRuns).toHaveLength(3);
  const removal = next.plan.heatRuns[0];
  expect(removal.siteIds).toEqual(['site-1', 'site-2']);
  expect(removal.segments.filter((segment) => segment.gas).map((segment) => segment.siteId)).toEqual([
    'site-1',
    'site-1',
    'site-2',
    'site-2',
  ]);
  expect(removal.segments.at(-1)?.gas).toBeNull();
});

test('a site on the other side gets heat runs of its own', () => {
  const next = addSiteOn(addSiteOn(smallDocument(), 'U1'), 'C2');
  expect(next.plan.heatRuns.map((run) => [run.id, run.side])).toEqual([
    ['run-1', 'top'],
    ['run-2', 'top'],
    ['run-3', 'top'],
    ['run-4', 'bottom'],
    ['run-5', 'bottom'],
    ['run-6', 'bottom'],
  ]);
});

test('an area finds the part it is meant for; drawn again it moves the site', () => {
  const start = smallDocument();
  const area = { x: 42, y: 30, lengthMm: 20, widthMm: 18, turnDeg: 0 };
  expect(targetIn(start.board, area, 'top')).toBe('U1');
  expect(targetIn(start.board, { ...area, lengthMm: 3, widthMm: 3 }, 'top')).toBe('U1');
  expect(targetIn(start.board, { ...area, x: 5, y: 50, lengthMm: 3, widthMm: 3 }, 'top')).toBeNull();
  const placed = addSiteAt(start, area, null, 'top');
  expect(placed.plan.sites[0].area).toEqual(area);
  const moved = addSiteAt(placed, { ...area, x: 41 }, null, 'top');
  expect(moved.plan.sites).toHaveLength(1);
  expect(moved.plan.sites[0].area.x).toBe(41);
});

test('removing a site takes its tag, its stretches and runs left empty', () => {
  const both = addSiteOn(addSiteOn(smallDocument(), 'U1'), 'U2');
  const one = removeSite(both, 'site-1');
  expect(one.plan.sites.map((site) => site.target)).toEqual(['U2']);
  expect(one.plan.tags.map((tag) => tag.kind)).toEqual(['replace']);
  expect(one.plan.heatRuns.flatMap((run) => run.segments).some((segment) => segment.siteId === 'site-1')).toBe(false);
  expect(removeTagKind(one, ['U2'], 'replace').plan.heatRuns).toEqual([]);
});

test('tags take their place in the order of work: off, shields, exchange', () => {
  let next = addSiteOn(smallDocument(), 'U1');
  next = setTag(next, ['C1'], 'shield');
  next = setTag(next, ['C2', 'U2'], 'remove');
  expect(orderOf(next)).toEqual(['1 remove C2', '2 remove U2', '3 shield C1', '4 replace U1']);
  const moved = moveTag(next, tagsOf(next, 'U1')[0].id, 1);
  expect(orderOf(moved)[0]).toBe('1 replace U1');
  expect(moved.plan.tags.map((tag) => tag.order).toSorted()).toEqual([1, 2, 3, 4]);
});

test('removals get tray slots of their own; a part keeps one of remove, shield, relocate, replace', () => {
  const removed = setTag(smallDocument(), ['C1', 'C2'], 'remove');
  expect(removed.plan.tags.map((tag) => tag.kind === 'remove' && tag.traySlot)).toEqual(['A1', 'A2']);
  const shielded = setTag(removed, ['C1'], 'shield');
  expect(tagsOf(shielded, 'C1').map((tag) => tag.kind)).toEqual(['shield']);
  const programmed = setTag(shielded, ['C1'], 'reprogram');
  expect(tagsOf(programmed, 'C1').map((tag) => tag.kind)).toEqual(['shield', 'reprogram']);
});

test('a tag key sets the tag on all, and takes it off only when all have it', () => {
  const some = setTag(smallDocument(), ['C1'], 'shield');
  const all = toggleTag(some, ['C1', 'C2'], 'shield');
  expect(all.plan.tags).toHaveLength(2);
  expect(toggleTag(all, ['C1', 'C2'], 'shield').plan.tags).toEqual([]);
});

test('watch points are named by the first free number', () => {
  const start = addWatchPoint(smallDocument(), { x: 1, y: 2 }, 'top', null);
  const more = watchParts(start, ['U1', 'C2']);
  expect(watchPointsOf(more).map((tag) => [tag.name, tag.side, tag.refdes])).toEqual([
    ['W1', 'top', null],
    ['W2', 'top', 'U1'],
    ['W3', 'bottom', 'C2'],
  ]);
  expect(watchParts(more, ['U1'])).toBe(more);
});

test('a heat run may be added, copied and keep its last stretch', () => {
  const start = addRun(addSiteOn(smallDocument(), 'U1'), 'cover-removal', 'top', 'Can off');
  const copied = duplicateRun(start, 'run-4', 'Can off, again');
  expect(copied.plan.heatRuns.map((run) => run.id)).toEqual(['run-1', 'run-2', 'run-3', 'run-4', 'run-5']);
  let bare = copied;
  for (let index = 0; index < 20; index++) bare = removeSegment(bare, 'run-5', 0);
  expect(bare.plan.heatRuns[4].segments).toHaveLength(1);
  const before = copied.plan.heatRuns[4].segments[2];
  const end = before.gas?.endC;
  const longer = addSegmentAfter(copied, 'run-5', 2, 'More gas');
  expect(longer.plan.heatRuns[4].segments[3]).toMatchObject({ name: 'More gas', gas: { startC: end, endC: end } });
  expect(longer.plan.heatRuns[4].segments[3].preheater.startC).toBe(before.preheater.endC);
  expect(setRunSite(copied, 'run-5', 'site-1', false).plan.heatRuns[4].siteIds).toEqual([]);
});

test('a nozzle of another kind keeps size, stand-off and tilt', () => {
  const start = setNozzle(setNozzleKind(smallDocument(), 'round'), { diameterMm: 9, standOffMm: 14, tiltDeg: 5 });
  const hood = setNozzleKind(start, 'hood');
  expect(hood.plan.station.nozzle).toMatchObject({ kind: 'hood', lengthMm: 9, widthMm: 9, standOffMm: 14, tiltDeg: 5 });
  expect(setNozzleKind(hood, 'round').plan.station.nozzle).toMatchObject({ kind: 'round', diameterMm: 9, tiltDeg: 5 });
  expect(setNozzle(start, { leak: 0.5 })).toEqual(start);
});

test('parts: a class confirmed, limits of the data sheet set and taken away', () => {
  const confirmed = confirmClass(smallDocument(), ['C1']);
  expect(confirmed.board.parts.map((part) => part.classGuessed)).toEqual([true, false, true, true, true]);
  const limited = setOwnLimits(confirmed, ['C1'], { skinC: 120, source: 'data sheet' });
  expect(limited.board.parts[1].limits).toEqual({ skinC: 120, source: 'data sheet' });
  expect('limits' in setOwnLimits(limited, ['C1'], null).board.parts[1]).toBe(false);
});

test('more layers go inside as planes, fewer leave the outer ones', () => {
  const six = setLayerCount(smallDocument(), 6);
  expect(six.board.laminate.layers.map((layer) => layer.kind)).toEqual([
    'signal',
    'plane',
    'plane',
    'plane',
    'plane',
    'signal',
  ]);
  expect(setLayerCount(six, 2).board.laminate.layers.map((layer) => layer.kind)).toEqual(['signal', 'signal']);
});

test('a moved area leaves the rest of the site alone', () => {
  const start = addSiteOn(smallDocument(), 'U1');
  const moved = moveSiteArea(start, 'site-1', { x: 1, y: 2, lengthMm: 3, widthMm: 4, turnDeg: 5 });
  expect(moved.plan.sites[0]).toMatchObject({ target: 'U1', area: { x: 1, turnDeg: 5 } });
  expect(start.plan.sites[0].area.x).toBe(40);
});
