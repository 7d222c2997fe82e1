import type { Part } from '../../../../shared-types/board.ts';
import { guessPart } from '../../../../shared-types/library/guess-part.ts';
import type { Design, DesignComponent, DesignPackage, DesignStep } from '../exchange/types.ts';
import { tidy } from '../outline/contour.ts';
import { type Loop, makeLoop } from '../outline/loop.ts';
import { arrayGrid } from '../pads/extents.ts';
import { type Box, boxCentre, boxHeight, boxOfPoints, boxWidth, normalAngle, type Point, turnPoint } from '../plane.ts';
import type { PartBody, PlacedMm, Registration } from '../register/register.ts';
import { flattenLoop, polygonArea, reverseSegment, type Segment } from '../segments.ts';
import type { Layers } from './layers.ts';
import type { BuiltPart } from './parts.ts';

/** The step that carries the parts: a panel's step repeats another and has few or none of its own. */
export function chooseStep({ steps }: Design): DesignStep | null {
  const [first] = [...steps].sort((a, b) => b.components.length - a.components.length);
  return first && first.components.length > 0 ? first : null;
}

/** The profile as the only outline source; one file has one origin. */
export function designLayers(design: Design, step: DesignStep, file: string): Layers {
  const loops = step.profile.map((segments) => profileLoop(segments, file));
  return {
    pads: new Map(),
    midpoints: { top: [], bottom: [] },
    outlines: loops.length > 0 ? [{ file, declared: true, loops }] : [],
    padLayer: null,
    netlist: null,
    unnamed: { top: [], bottom: [] },
    copperLayers: design.copperLayers >= 1 && design.copperLayers <= 64 ? design.copperLayers : null,
    used: new Set([file]),
  };
}

/** Loops run counter-clockwise. */
function profileLoop(segments: readonly Segment[], file: string): Loop {
  const forward = polygonArea(flattenLoop(segments, 0.01)) >= 0;
  return makeLoop(forward ? segments : [...segments].reverse().map(reverseSegment), file, 0, 0);
}

/** The step's components as placements with bodies, in mm and in the board's own sense of turning. */
export function registerDesign(design: Design, step: DesignStep, file: string): Registration {
  const placements = step.components.map((component) => placementOf(design, step, component, file));
  const offset = { x: 0, y: 0, votes: 0, of: 0, by: 'own' as const };
  return { placements, assumedUnit: null, unitBy: 'said', bottomNegated: false, bottomBy: 'usual', offset };
}

function placementOf(design: Design, step: DesignStep, component: DesignComponent, file: string): PlacedMm {
  const { refdes, packageName, value, rotation, mirror, layer } = component;
  const side = sideOf(design.layerSides.get(layer) ?? '', mirror);
  // The mirror (x to -x) comes after the rotation: R(180 - a) after y to -y is the same map.
  const turn = normalAngle(mirror ? 180 - rotation : rotation);
  const pack = step.packages.get(packageName);
  const flipped = mirror !== (side === 'bottom');
  const body = pack ? bodyOf(pack, flipped) : null;
  return {
    refdes,
    ...placeOf(component, body, side, turn),
    rotation: turn,
    side,
    packageName,
    value,
    heightMm: component.heightMm ?? pack?.heightMm ?? null,
    pad1: null,
    fitted: !design.notFitted.has(refdes),
    file,
    line: 0,
    ...(body ? { body } : {}),
  };
}

function sideOf(side: string, mirror: boolean): PlacedMm['side'] {
  if (side === 'TOP') return 'top';
  if (side === 'BOTTOM') return 'bottom';
  return side === 'INTERNAL' ? 'inner' : mirror ? 'bottom' : 'top';
}

/** The middle of the body: the package's origin may lie elsewhere in it. */
function placeOf({ x, y }: Point, body: PartBody | null, side: PlacedMm['side'], turn: number): Point {
  if (body === null) return { x, y };
  const { x: dx, y: dy } = turnPoint({ x: body.middle.x, y: side === 'bottom' ? -body.middle.y : body.middle.y }, turn);
  return { x: x + dx, y: y + dy };
}

/** Body, pins and pin one in own axes about the body's middle. The assembly drawing shows the body; an outline may be a courtyard. */
function bodyOf(pack: DesignPackage, flipped: boolean): PartBody | null {
  const box = bodyBox(pack);
  if (box === null) return null;
  const middle = boxCentre(box);
  const own = ({ x, y }: Point): Point => (flipped ? { x, y: -y } : { x, y });
  const fromMiddle = (pin: Point): Point => own({ x: pin.x - middle.x, y: pin.y - middle.y });
  const first = pack.pinOne === null ? undefined : pack.pins.get(pack.pinOne);
  return {
    middle: own(middle),
    lengthMm: boxWidth(box),
    widthMm: boxHeight(box),
    pins: [...pack.pins.values()].map(fromMiddle),
    pin1: first ? fromMiddle(first) : null,
    through: pack.through,
  };
}

function bodyBox({ outline, assembly, pins }: DesignPackage): Box | null {
  if (outline && assembly && boxWidth(assembly) > 0 && boxHeight(assembly) > 0 && holds(outline, assembly))
    return assembly;
  const box = outline ?? assembly ?? (pins.size > 1 ? boxOfPoints([...pins.values()]) : null);
  return box && boxWidth(box) > 0 && boxHeight(box) > 0 ? box : null;
}

function holds(outer: Box, inner: Box): boolean {
  return (
    inner.minX >= outer.minX - 0.01 &&
    inner.maxX <= outer.maxX + 0.01 &&
    inner.minY >= outer.minY - 0.01 &&
    inner.maxY <= outer.maxY + 0.01
  );
}

const MIN_BODY_MM = 0.1;

/** A part whose body the file draws: the size is the file's, the class is guessed by name and pins. */
export function buildBodied(placement: PlacedMm, body: PartBody): BuiltPart {
  const { refdes, packageName, value, heightMm } = placement;
  const size = { lengthMm: body.lengthMm, widthMm: body.widthMm };
  const padGrid = body.through ? null : arrayGrid(body.pins);
  const pinCount = body.pins.length > 0 ? body.pins.length : null;
  const guess = guessPart({ refdes, packageName, value, pinCount, bodyMm: size, padGrid });
  const mm = (length: number) => Math.max(MIN_BODY_MM, Math.round(length * 1e4) / 1e4);
  const part: Part = {
    refdes,
    side: placement.side === 'bottom' ? 'bottom' : 'top',
    x: tidy(placement.x),
    y: tidy(placement.y),
    turn: placement.rotation,
    package: {
      name: packageName.slice(0, 200),
      shape: guess.package?.shape ?? 'rectangle',
      lengthMm: mm(size.lengthMm),
      widthMm: mm(size.widthMm),
      heightMm: heightMm && heightMm < 200 ? heightMm : (guess.package?.heightMm ?? null),
    },
    class: guess.classId,
    classGuessed: true,
    value: value.slice(0, 200),
    fitted: placement.fitted,
    alloy: 'unknown',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...(pinCount ? { pinCount: Math.min(pinCount, 10_000) } : {}),
    ...(body.pin1 ? { pin1: { x: tidy(body.pin1.x), y: tidy(body.pin1.y) } } : {}),
  };
  return { part, placement, land: null, offMm: null, middle: null, sizeBy: 'name' };
}
