import type { Cover } from '../../../../shared-types/board.ts';
import type { WindowImportChoices } from '../../../../shared-types/import-choices.ts';
import type { ImportFacts } from '../../../../shared-types/import-report.ts';
import { USUAL_COVERS } from '../../../../shared-types/library/usual-covers.ts';
import { tidy } from '../outline/contour.ts';
import type { Pad } from '../pads/collect.ts';
import { ownPadsBox, type Pose, toOwnAxes } from '../pads/extents.ts';
import { type Box, boxCentre, boxHeight, boxWidth, type Point, turnPoint } from '../plane.ts';
import type { BuiltPart } from './parts.ts';

/** A part that may be a shield can or its frame, and what was made of it. */
export type FoundCover = ImportFacts['covers'][number];

export interface Covers {
  readonly covers: readonly Cover[];
  readonly parts: readonly BuiltPart[];
  readonly found: readonly FoundCover[];
}

/** Letters of shields, their frames and lids. Common practice, no source. */
const PREFIX = /^(SHLD|SHIELD|SHD|RFS|EMIS)[-_]?\d/i;
/** These may mean a shunt, a bus or a fan too: parts under it have to agree. */
const SHORT_PREFIX = /^(SH|CAN|FRAME|FRM|FENCE|FEN|COVER|COV|CVR|LID)[-_]?\d/i;
export const isShieldName = (refdes: string): boolean => PREFIX.test(refdes);

/** Words of package, value and description that say it; 'shielded' says it of a coil or a socket. Common practice, no source. */
const WORDS =
  /(^|[^A-Z])((RF|EMI|EMC)[ _-]*(SHIELD|CAN|COVER|FRAME|FENCE)|(SHIELD(ING)?|SCREENING)[ _-]*(CAN|CASE|COVER|FRAME|FENCE|LID|CABINET)|SHIELD(ING)?([^A-Z]|$)|CAN[ _-]*(FRAME|COVER))/i;
const FRAME_WORDS = /FRAME|FENCE|(^|[^A-Z])FRM/i;
/** Sockets, plugs, coils and integrated circuits may be shielded themselves. */
const OTHERS = /^(J|P|X|CN|CON|L|FB|T|TR|U|IC|R|C|D|Q|Y|ANT|TP|H|MH|FID)[-_]?\d/i;

/** As many as the board's format takes. */
const MOST_COVERS = 1000;
const LEAST_MM = 4;
const MANY_UNDER = 3;

/**
 * Shield cans and frames among the parts: told by designator or words, or lying over several others. One becomes a cover
 * where that was told and its size is known (its ring of pads, or the outline that the file draws); else it stays a part and is
 * said. Whoever imports may decide otherwise, part by part.
 */
export function splitCovers(
  built: readonly BuiltPart[],
  pads: ReadonlyMap<string, readonly Pad[]>,
  choices: WindowImportChoices['covers'] = {},
): Covers {
  const covers: Cover[] = [];
  const found: FoundCover[] = [];
  const parts = built.filter((one) => {
    if (covers.length >= MOST_COVERS) return true;
    const told = described(one, built, pads, choices[one.part.refdes]);
    if (told === null) return true;
    found.push(told.found);
    if (told.cover) covers.push(told.cover);
    return told.cover === null;
  });
  return { covers, parts, found };
}

function described(
  one: BuiltPart,
  built: readonly BuiltPart[],
  pads: ReadonlyMap<string, readonly Pad[]>,
  chosen: 'can' | 'frame' | 'part' | undefined,
): { found: FoundCover; cover: Cover | null } | null {
  const { part } = one;
  if (!part.fitted) return null;
  const by = saidBy(one);
  const box = knownBox(one, pads.get(part.refdes) ?? []);
  const under = box ? partsUnder(part, box, built) : 0;
  const large = box !== null && Math.min(boxWidth(box), boxHeight(box)) >= LEAST_MM;
  if (!by && !chosen && (under < MANY_UNDER || !large)) return null;
  const sure = by !== null && (under > 0 || !SHORT_PREFIX.test(part.refdes) || saysIt(one));
  const guessed = FRAME_WORDS.test(textOf(one)) ? 'frame' : 'can';
  const wanted = chosen ?? (sure && large ? guessed : 'part');
  const made = wanted === 'part' || box === null ? null : { kind: wanted, cover: coverOf(one, wanted, box) };
  return {
    found: {
      refdes: part.refdes,
      as: made?.kind ?? 'part',
      by: by ?? 'over',
      // Without a size no choice makes a cover of it.
      chosen: chosen === 'part' || (chosen !== undefined && box !== null),
      under,
      lengthMm: box ? tidy(boxWidth(box)) : null,
      widthMm: box ? tidy(boxHeight(box)) : null,
    },
    cover: made?.cover ?? null,
  };
}

const textOf = ({ part, placement }: BuiltPart): string =>
  [part.refdes, placement.packageName, placement.value].join(' ');

function saidBy({ part, placement }: BuiltPart): 'name' | 'words' | null {
  if (OTHERS.test(part.refdes)) return null;
  if (saysIt({ placement })) return 'words';
  return PREFIX.test(part.refdes) || SHORT_PREFIX.test(part.refdes) ? 'name' : null;
}

const saysIt = ({ placement: { packageName, value } }: Pick<BuiltPart, 'placement'>): boolean =>
  WORDS.test(packageName) || WORDS.test(value);

/** The box in the part's own axes, about its middle: of its pads, or of the body where the file draws it or its name tells it. */
function knownBox({ part, placement, land, sizeBy }: BuiltPart, pads: readonly Pad[]): Box | null {
  if (land && pads.length > 0) return ownPadsBox(pads, poseOf(part));
  if (!placement.body && sizeBy !== 'name') return null;
  const [x, y] = [part.package.lengthMm / 2, part.package.widthMm / 2];
  return { minX: -x, minY: -y, maxX: x, maxY: y };
}

const poseOf = ({ x, y, side, turn }: Pose): Pose => ({ x, y, side, turn });

function partsUnder(part: BuiltPart['part'], box: Box, built: readonly BuiltPart[]): number {
  return built.filter(({ part: other }) => {
    if (other === part || other.side !== part.side) return false;
    const own = toOwnAxes(part, other);
    return own.x > box.minX && own.x < box.maxX && own.y > box.minY && own.y < box.maxY;
  }).length;
}

function coverOf({ part, placement }: BuiltPart, kind: 'can' | 'frame', box: Box): Cover {
  const own: Point = boxCentre(box);
  const off = turnPoint({ x: own.x, y: part.side === 'bottom' ? -own.y : own.y }, part.turn);
  const usual = USUAL_COVERS[kind];
  return {
    id: part.refdes,
    kind,
    side: part.side,
    x: tidy(part.x + off.x),
    y: tidy(part.y + off.y),
    lengthMm: tidy(boxWidth(box)),
    widthMm: tidy(boxHeight(box)),
    turn: part.turn,
    ...usual,
    ...(placement.heightMm && placement.heightMm <= 100 ? { heightMm: placement.heightMm } : {}),
  };
}
