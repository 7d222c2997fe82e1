import { type Disc, turnPoint } from '../plane.ts';
import { evaluateExpression } from './expression.ts';
import { circleDiscs, hullOfDiscs, rectangleDiscs, regularPolygonDiscs } from './shapes.ts';

/** Statements of an aperture macro, as they stand in the file. */
export type MacroBody = readonly string[];

const MAX_PRIMITIVES = 10_000;

/**
 * Extents of a macro instance as a hull of discs, in file units (Gerber format specification, section 4.5).
 * Primitives with exposure off only take away and are left out, so the hull may be larger than the image, never smaller.
 * Returns null when a statement cannot be read.
 */
export function macroShape(body: MacroBody, parameters: readonly number[]): Disc[] | null {
  const variables = new Map(parameters.map((value, index) => [index + 1, value]));
  const discs: Disc[] = [];
  if (body.length > MAX_PRIMITIVES) return null;
  for (const statement of body) {
    if (statement === '' || /^0(\s|$)/.test(statement)) continue;
    const assignment = /^\$(\d+)=(.*)$/.exec(statement.replace(/\s+/g, ''));
    if (assignment) {
      variables.set(Number(assignment[1]), evaluateExpression(assignment[2], variables));
      continue;
    }
    const values = statement.split(',').map((field) => evaluateExpression(field, variables));
    if (values.some((value) => !Number.isFinite(value))) return null;
    const added = primitive(values);
    if (added === null) return null;
    for (const disc of added) discs.push(disc);
  }
  return hullOfDiscs(discs);
}

function primitive(values: readonly number[]): Disc[] | null {
  const [code, ...rest] = values;
  switch (code) {
    case 1:
      return circlePrimitive(rest);
    case 2:
    case 20:
      return vectorLine(rest);
    case 21:
      return centreLine(rest);
    case 22:
      return lowerLeftLine(rest);
    case 4:
      return outlinePrimitive(rest);
    case 5:
      return polygonPrimitive(rest);
    case 6:
      return moirePrimitive(rest);
    case 7:
      return thermalPrimitive(rest);
    default:
      return null;
  }
}

/** Rotation of macro primitives is about the macro's origin, not about the primitive. */
function turned(discs: readonly Disc[], degrees: number | undefined): Disc[] {
  return discs.map((disc) => ({ ...turnPoint(disc, degrees ?? 0), r: disc.r }));
}

const at = (discs: readonly Disc[], x: number, y: number): Disc[] =>
  discs.map((disc) => ({ x: disc.x + x, y: disc.y + y, r: disc.r }));

function circlePrimitive([exposure, diameter, x, y, rotation]: readonly number[]): Disc[] | null {
  if (y === undefined) return null;
  return exposure === 0 ? [] : turned(at(circleDiscs(diameter), x, y), rotation);
}

function vectorLine([exposure, width, x1, y1, x2, y2, rotation]: readonly number[]): Disc[] | null {
  if (y2 === undefined) return null;
  if (exposure === 0) return [];
  const length = Math.hypot(x2 - x1, y2 - y1);
  const nx = length === 0 ? 0 : ((y1 - y2) / length) * (width / 2);
  const ny = length === 0 ? 0 : ((x2 - x1) / length) * (width / 2);
  const corners = [
    { x: x1 + nx, y: y1 + ny, r: 0 },
    { x: x1 - nx, y: y1 - ny, r: 0 },
    { x: x2 + nx, y: y2 + ny, r: 0 },
    { x: x2 - nx, y: y2 - ny, r: 0 },
  ];
  return turned(corners, rotation);
}

function centreLine([exposure, width, height, x, y, rotation]: readonly number[]): Disc[] | null {
  if (y === undefined) return null;
  return exposure === 0 ? [] : turned(at(rectangleDiscs(width, height), x, y), rotation);
}

function lowerLeftLine([exposure, width, height, x, y, rotation]: readonly number[]): Disc[] | null {
  if (y === undefined) return null;
  return exposure === 0 ? [] : turned(at(rectangleDiscs(width, height), x + width / 2, y + height / 2), rotation);
}

function outlinePrimitive([exposure, corners, ...rest]: readonly number[]): Disc[] | null {
  const count = 2 * (corners + 1);
  if (!(corners >= 1) || rest.length < count) return null;
  if (exposure === 0) return [];
  const discs: Disc[] = [];
  for (let index = 0; index < count; index += 2) discs.push({ x: rest[index], y: rest[index + 1], r: 0 });
  return turned(discs, rest[count]);
}

function polygonPrimitive([exposure, vertices, x, y, diameter, rotation]: readonly number[]): Disc[] | null {
  if (diameter === undefined || !(vertices >= 3 && vertices <= 1000)) return null;
  return exposure === 0 ? [] : turned(at(regularPolygonDiscs(diameter, vertices, 0), x, y), rotation);
}

function moirePrimitive(values: readonly number[]): Disc[] | null {
  const [x, y, outer, , , , crossWidth, crossLength, rotation] = values;
  if (crossLength === undefined) return null;
  const cross = [...rectangleDiscs(crossLength, crossWidth), ...rectangleDiscs(crossWidth, crossLength)];
  return turned(at([...circleDiscs(outer), ...cross], x, y), rotation);
}

/** A ring cut by a cross of gaps: points along the outer arcs that the gaps leave. */
function thermalPrimitive([x, y, outer, , gap, rotation]: readonly number[]): Disc[] | null {
  if (gap === undefined) return null;
  const radius = outer / 2;
  const cut = Math.asin(Math.min(1, gap / 2 / radius));
  const discs: Disc[] = [];
  for (let quarter = 0; quarter < 4; quarter++) {
    const start = (quarter * Math.PI) / 2 + cut;
    const sweep = Math.PI / 2 - 2 * cut;
    for (let step = 0; step <= 90; step++) {
      const angle = start + (sweep * step) / 90;
      discs.push({ x: radius * Math.cos(angle), y: radius * Math.sin(angle), r: 0 });
    }
  }
  return turned(at(discs, x, y), rotation);
}
