import fc from 'fast-check';
import { setBoardData, setLaminate, setLayer, setLayerCount } from '../../../../renderer/editing/board-data.ts';
import { moveOrigin, turnBoard } from '../../../../renderer/editing/board-frame.ts';
import * as corners from '../../../../renderer/editing/contour/corners.ts';
import { roundCorners } from '../../../../renderer/editing/contour/rounding.ts';
import { circleContour, rectangleContour, slotContour } from '../../../../renderer/editing/contour/shapes.ts';
import { addRun, duplicateRun, moveRun, removeRun, setRunSite } from '../../../../renderer/editing/heat-runs.ts';
import { addCutout, placeForCopy, removeCutout, setContour } from '../../../../renderer/editing/outline.ts';
import {
  confirmClass,
  setClass,
  setHeight,
  setMass,
  setOwnLimits,
  setPartFields,
} from '../../../../renderer/editing/parts.ts';
import * as segments from '../../../../renderer/editing/segments.ts';
import { addSiteAt, addSiteOn, moveSiteArea, removeSite } from '../../../../renderer/editing/sites.ts';
import { setNozzle, setNozzleKind, setPreheater, setStation } from '../../../../renderer/editing/station.ts';
import { clearTags, moveTag, setTagNote, toggleTag } from '../../../../renderer/editing/tags.ts';
import { setClampedTurn, setTicketData } from '../../../../renderer/editing/ticket-data.ts';
import { addWatchPoint, moveWatchPoint, watchParts } from '../../../../renderer/editing/watch-points.ts';
import type { Contour } from '../../../../shared-types/geometry.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { anyPartCommand } from './random-part-commands.ts';

export type Command = (document: TicketDocument) => TicketDocument;

const refdes = fc.constantFrom('U1', 'C1', 'C2', 'R1', 'U2', 'NOPE');
const many = fc.uniqueArray(refdes, { maxLength: 4 });
const kind = fc.constantFrom('remove', 'relocate', 'shield', 'replace', 'reprogram' as const);
const side = fc.constantFrom('top', 'bottom' as const);
const id = (prefix: string) => fc.integer({ min: 1, max: 5 }).map((n) => `${prefix}-${n}`);
const figure = fc.integer({ min: 1, max: 60 });
const index = fc.integer({ min: 0, max: 6 });
const at = fc.record({ x: figure, y: figure });
const area = fc.record({ x: figure, y: figure, lengthMm: figure, widthMm: figure, turnDeg: figure });
const words = fc.string({ maxLength: 8 });
const named = fc.string({ minLength: 1, maxLength: 8 });
const runKind = fc.constantFrom('removal', 'site-preparation', 'installation', 'cover-removal' as const);

const contourId = fc.oneof(fc.constant('outline' as const), fc.nat({ max: 3 }));
type Change = (contour: Contour) => Contour | null;
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(index, at).map(
    ([i, p]): Change =>
      (c) =>
        corners.moveCorner(c, i, p),
  ),
  fc.tuple(index, at).map(
    ([i, p]): Change =>
      (c) =>
        corners.moveEdge(c, i, { x: p.x - 30, y: p.y - 30 }),
  ),
  index.map(
    (i): Change =>
      (c) =>
        corners.insertCorner(c, i),
  ),
  index.map(
    (i): Change =>
      (c) =>
        corners.deleteCorner(c, i),
  ),
  fc.tuple(index, figure).map(
    ([i, n]): Change =>
      (c) =>
        corners.setLength(c, i, n),
  ),
  fc.tuple(index, figure).map(
    ([i, n]): Change =>
      (c) =>
        corners.setAngle(c, i, 6 * n),
  ),
  fc.tuple(index, figure).map(
    ([i, n]): Change =>
      (c) =>
        corners.setRadius(c, i, n - 30),
  ),
  figure.map(
    (n): Change =>
      (c) =>
        roundCorners(c, [...c.keys()], n / 10),
  ),
);

/** Drawing commands: outline, cutouts, the place of the board. */
const drawingCommand: fc.Arbitrary<Command> = fc.oneof(
  fc.tuple(contourId, change).map(
    ([id, c]): Command =>
      (d) => {
        const before = id === 'outline' ? d.board.outline : d.board.cutouts[id];
        const after = before && c(before);
        return after ? setContour(d, id, after) : d;
      },
  ),
  fc.tuple(at, figure).map(
    ([p, n]): Command =>
      (d) =>
        addCutout(d, circleContour(p, n / 6)),
  ),
  fc.tuple(at, at, figure).map(
    ([p, q, n]): Command =>
      (d) =>
        addCutout(d, slotContour(p, q, n / 6)),
  ),
  fc.tuple(at, at, figure).map(
    ([p, q, n]): Command =>
      (d) =>
        addCutout(d, rectangleContour(p, q, n / 6)),
  ),
  fc.nat({ max: 3 }).map(
    (i): Command =>
      (d) => {
        const copy = placeForCopy(d.board, i, 1);
        return copy ? addCutout(d, copy) : d;
      },
  ),
  fc.nat({ max: 3 }).map(
    (i): Command =>
      (d) =>
        removeCutout(d, i),
  ),
  at.map(
    (p): Command =>
      (d) =>
        moveOrigin(d, p),
  ),
  fc.tuple(fc.boolean(), fc.constantFrom(0, 1, 2, 3 as const)).map(
    ([mirror, quarters]): Command =>
      (d) =>
        turnBoard(d, { mirror, quarters }),
  ),
);

/** Any one command with any arguments that its types allow. */
export const anyCommand: fc.Arbitrary<Command> = fc.oneof(
  { weight: 8, arbitrary: drawingCommand },
  { weight: 12, arbitrary: anyPartCommand },
  fc.tuple(many, kind).map(
    ([r, k]): Command =>
      (d) =>
        toggleTag(d, r, k),
  ),
  many.map(
    (r): Command =>
      (d) =>
        clearTags(d, r),
  ),
  fc.tuple(id('tag'), index).map(
    ([t, i]): Command =>
      (d) =>
        moveTag(d, t, i),
  ),
  fc.tuple(id('tag'), words).map(
    ([t, w]): Command =>
      (d) =>
        setTagNote(d, t, w),
  ),
  refdes.map(
    (r): Command =>
      (d) =>
        addSiteOn(d, r),
  ),
  fc.tuple(area, side).map(
    ([a, s]): Command =>
      (d) =>
        addSiteAt(d, a, null, s),
  ),
  fc.tuple(id('site'), area).map(
    ([s, a]): Command =>
      (d) =>
        moveSiteArea(d, s, a),
  ),
  id('site').map(
    (s): Command =>
      (d) =>
        removeSite(d, s),
  ),
  fc.tuple(at, side).map(
    ([p, s]): Command =>
      (d) =>
        addWatchPoint(d, p, s, null),
  ),
  fc.tuple(id('tag'), at).map(
    ([t, p]): Command =>
      (d) =>
        moveWatchPoint(d, t, p, null),
  ),
  many.map(
    (r): Command =>
      (d) =>
        watchParts(d, r),
  ),
  fc.tuple(runKind, side, named).map(
    ([k, s, n]): Command =>
      (d) =>
        addRun(d, k, s, n),
  ),
  fc.tuple(id('run'), named).map(
    ([r, n]): Command =>
      (d) =>
        duplicateRun(d, r, n),
  ),
  id('run').map(
    (r): Command =>
      (d) =>
        removeRun(d, r),
  ),
  fc.tuple(id('run'), index).map(
    ([r, i]): Command =>
      (d) =>
        moveRun(d, r, i),
  ),
  fc.tuple(id('run'), id('site'), fc.boolean()).map(
    ([r, s, on]): Command =>
      (d) =>
        setRunSite(d, r, s, on),
  ),
  fc.tuple(id('run'), index, figure).map(
    ([r, i, n]): Command =>
      (d) =>
        segments.setSegment(d, r, i, { seconds: n }),
  ),
  fc.tuple(id('run'), index, named).map(
    ([r, i, n]): Command =>
      (d) =>
        segments.addSegmentAfter(d, r, i, n),
  ),
  fc.tuple(id('run'), index).map(
    ([r, i]): Command =>
      (d) =>
        segments.duplicateSegment(d, r, i),
  ),
  fc.tuple(id('run'), index).map(
    ([r, i]): Command =>
      (d) =>
        segments.removeSegment(d, r, i),
  ),
  fc.tuple(id('run'), index, index).map(
    ([r, i, p]): Command =>
      (d) =>
        segments.moveSegment(d, r, i, p),
  ),
  fc.tuple(id('run'), index).map(
    ([r, i]): Command =>
      (d) =>
        segments.setGas(d, r, i, null),
  ),
  fc.constantFrom('round', 'rectangular', 'hood' as const).map(
    (k): Command =>
      (d) =>
        setNozzleKind(d, k),
  ),
  figure.map(
    (n): Command =>
      (d) =>
        setNozzle(d, { standOffMm: n, diameterMm: n, leak: n / 100 }),
  ),
  figure.map(
    (n): Command =>
      (d) =>
        setPreheater(d, { lengthMm: n }),
  ),
  figure.map(
    (n): Command =>
      (d) =>
        setStation(d, { roomC: n }),
  ),
  words.map(
    (w): Command =>
      (d) =>
        setTicketData(d, { notes: w }),
  ),
  fc.integer({ min: -720, max: 720 }).map(
    (n): Command =>
      (d) =>
        setClampedTurn(d, n),
  ),
  named.map(
    (n): Command =>
      (d) =>
        setBoardData(d, { name: n }),
  ),
  fc.integer({ min: 0, max: 12 }).map(
    (n): Command =>
      (d) =>
        setLayerCount(d, n),
  ),
  fc.tuple(index, figure).map(
    ([i, n]): Command =>
      (d) =>
        setLayer(d, i, { copperUm: n }),
  ),
  figure.map(
    (n): Command =>
      (d) =>
        setLaminate(d, { thicknessMm: n / 10 }),
  ),
  many.map(
    (r): Command =>
      (d) =>
        confirmClass(d, r),
  ),
  fc.tuple(many, named).map(
    ([r, c]): Command =>
      (d) =>
        setClass(d, r, c),
  ),
  fc.tuple(many, figure).map(
    ([r, n]): Command =>
      (d) =>
        setHeight(d, r, n),
  ),
  fc.tuple(many, fc.option(figure)).map(
    ([r, n]): Command =>
      (d) =>
        setMass(d, r, n),
  ),
  many.map(
    (r): Command =>
      (d) =>
        setPartFields(d, r, { fitted: false }),
  ),
  fc.tuple(many, fc.option(fc.record({ bodyC: fc.integer({ min: 100, max: 200 }), source: named }))).map(
    ([r, l]): Command =>
      (d) =>
        setOwnLimits(d, r, l),
  ),
);
