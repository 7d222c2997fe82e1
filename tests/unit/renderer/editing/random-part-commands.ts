import fc from 'fast-check';
import { addParts, copiesOf, deleteParts, renamePart } from '../../../../renderer/editing/add-parts.ts';
import { alignParts, distributeParts } from '../../../../renderer/editing/arrange.ts';
import {
  addCover,
  coverOn,
  freeCoverId,
  removeCover,
  setCover,
  setCoverArea,
} from '../../../../renderer/editing/covers.ts';
import { flipParts, moveParts, setPose, turnOverParts, turnParts } from '../../../../renderer/editing/move-parts.ts';
import { putBoardPackage, removeBoardPackage } from '../../../../renderer/editing/own-packages.ts';
import { setPackage, setPin1 } from '../../../../renderer/editing/parts.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { draftOf } from '../../../../shared-types/rules/new-part.ts';
import { offerPackages } from '../../../../shared-types/rules/package-offers.ts';
import { nextPin1 } from '../../../../shared-types/rules/pin1.ts';

type Command = (document: TicketDocument) => TicketDocument;

const refdes = fc.constantFrom('U1', 'C1', 'C2', 'R1', 'U2', 'C3', 'U3', 'NOPE');
const many = fc.uniqueArray(refdes, { maxLength: 5 });
const side = fc.constantFrom('top', 'bottom' as const);
const figure = fc.integer({ min: 1, max: 60 });
const at = fc.record({ x: fc.integer({ min: -30, max: 60 }), y: figure });
const turn = fc.integer({ min: -400, max: 400 });
const axis = fc.constantFrom('x', 'y' as const);
const edge = fc.constantFrom('least', 'middle', 'most' as const);
const kind = fc.constantFrom('can', 'frame', 'stiffener' as const);
const ownName = fc.constantFrom('Slab', 'Brick');
const coverId = fc.constantFrom('SH1', 'SH2', 'ST1');
const area = fc.record({ x: figure, y: figure, lengthMm: figure, widthMm: figure, turnDeg: turn });
const offer = fc
  .constantFrom('c 0402', 'BGA 17x17 0.8', 'electrolytic 10x12', '4.5x3.2x1.1')
  .map((text) => offerPackages(text)[0]);

/** Any one command on parts or covers with any arguments that its types allow. */
export const anyPartCommand: fc.Arbitrary<Command> = fc.oneof(
  fc.tuple(refdes, side, at, turn, offer).map(
    ([r, s, p, t, o]): Command =>
      (d) =>
        addParts(d, [{ ...draftOf(o, r, ''), refdes: r, side: s, ...p, turn: t }]),
  ),
  fc.tuple(many, at, fc.boolean()).map(
    ([r, by, otherSide]): Command =>
      (d) =>
        addParts(d, copiesOf(d, r, [{ by, otherSide }, { by: { x: 0, y: by.y } }]).parts),
  ),
  many.map(
    (r): Command =>
      (d) =>
        deleteParts(d, r),
  ),
  fc.tuple(refdes, refdes).map(
    ([from, to]): Command =>
      (d) =>
        renamePart(d, from, to),
  ),
  fc.tuple(many, at).map(
    ([r, by]): Command =>
      (d) =>
        moveParts(d, r, by),
  ),
  fc.tuple(many, at, turn).map(
    ([r, p, t]): Command =>
      (d) =>
        setPose(d, r, { x: p.x, turn: t }),
  ),
  fc.tuple(many, turn).map(
    ([r, t]): Command =>
      (d) =>
        turnParts(d, r, t),
  ),
  many.map(
    (r): Command =>
      (d) =>
        flipParts(d, r),
  ),
  many.map(
    (r): Command =>
      (d) =>
        turnOverParts(d, r),
  ),
  fc.tuple(many, axis, edge).map(
    ([r, a, e]): Command =>
      (d) =>
        alignParts(d, r, a, e),
  ),
  fc.tuple(many, axis).map(
    ([r, a]): Command =>
      (d) =>
        distributeParts(d, r, a),
  ),
  fc.tuple(many, offer).map(
    ([r, o]): Command =>
      (d) =>
        setPackage(d, r, o),
  ),
  many.map(
    (r): Command =>
      (d) =>
        setPin1(d, r, nextPin1),
  ),
  fc.tuple(kind, side, area).map(
    ([k, s, a]): Command =>
      (d) =>
        addCover(d, coverOn(freeCoverId(d, k), k, s, a)),
  ),
  fc.tuple(coverId, coverId).map(
    ([from, to]): Command =>
      (d) =>
        setCover(d, from, { id: to, heightMm: 4 }),
  ),
  fc.tuple(coverId, area).map(
    ([c, a]): Command =>
      (d) =>
        setCoverArea(d, c, a),
  ),
  coverId.map(
    (c): Command =>
      (d) =>
        removeCover(d, c),
  ),
  fc.tuple(ownName, fc.option(ownName), figure).map(
    ([name, former, lengthMm]): Command =>
      (d) =>
        putBoardPackage(d, former, { name, shape: 'rectangle', lengthMm, widthMm: 2, heightMm: null, class: 'so' }),
  ),
  ownName.map(
    (name): Command =>
      (d) =>
        removeBoardPackage(d, name),
  ),
);
