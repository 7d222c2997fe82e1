import { flattenContour, insidePolygon } from '../../../../shared-types/geometry.ts';
import type { ImportNote } from '../../../../shared-types/import-report.ts';
import { byLetters, nameList } from '../../../../shared-types/words/imports.ts';
import { tidy } from '../outline/contour.ts';
import { MARGIN_MM } from './contours.ts';
import { padsLeftOut } from './from-pads.ts';
import type { BuiltPart } from './parts.ts';
import type { ReportInput } from './report.ts';

type Notes = (ImportNote | false)[];

/** What the finished board leaves to say: guesses, odd parts, doubtful outline. */
export function boardNotes(input: ReportInput): ImportNote[] {
  const notes: Notes = [
    ...padPlacementNotes(input),
    ...netlistNotes(input),
    input.built.length === 0 && { weight: 'warn', code: 'outline-alone' },
    ...billNotes(input),
    ...placementNotes(input),
    ...frameNotes(input),
    ...outlineNotes(input),
    ...coverNotes(input),
    ...partNotes(input.built),
    ...checkNotes(input),
  ];
  return notes.filter((note) => note !== false);
}

/** A note about parts, if there are any. */
function about(
  weight: ImportNote['weight'],
  code: ImportNote['code'],
  refdes: string[],
  detail?: ImportNote['detail'],
): ImportNote | false {
  return refdes.length > 0 && { weight, code, refdes, ...(detail ? { detail } : {}) };
}

/** Parts that come from no placement table: what was left aside, what is not known. */
function padPlacementNotes({ registration, design, files, layers, built }: ReportInput): Notes {
  if (design !== null) {
    const others = files.filter(
      (file) => file.name !== design && /^(placements|layer|design|netlist|drawing)$/.test(file.kind),
    );
    return [
      others.length > 0 && {
        weight: 'warn',
        code: 'design-alone',
        file: design,
        detail: { files: nameList(others.map(({ name }) => name)) },
      },
    ];
  }
  if (registration.offset?.by !== 'own') return [];
  const through = built.flatMap(({ part, land }) => (land?.through ? [part.refdes] : []));
  const left = padsLeftOut(layers.pads);
  return [
    { weight: 'warn', code: 'parts-by-pads', detail: { count: built.length } },
    about('warn', 'side-not-told', through),
    about('note', 'pads-only', left, { kinds: byLetters(left) }),
  ];
}

/** The netlist that stood in for named pads, or why it was not needed. */
function netlistNotes({ files, layers, design }: ReportInput): Notes {
  return files.flatMap((file): Notes => {
    if (file.kind !== 'netlist' || design !== null) return [];
    const { netlist } = layers;
    if (netlist?.file !== file.name) return [{ weight: 'note', code: 'netlist-not-needed', file: file.name }];
    const { unread, noEnd } = file.netlist;
    const { by, move, votes, of } = netlist;
    return [
      { weight: 'note', code: 'netlist-pads', file: file.name, detail: { parts: netlist.pads.size } },
      by === 'pads' && {
        weight: 'note',
        code: 'netlist-moved',
        file: file.name,
        detail: { x: tidy(move.x), y: tidy(move.y), votes, of },
      },
      by === 'corner' && { weight: 'warn', code: 'netlist-by-corner', file: file.name },
      unread > 0 && { weight: 'warn', code: 'netlist-unread', file: file.name, detail: { count: unread } },
      noEnd && { weight: 'warn', code: 'netlist-no-end', file: file.name },
    ];
  });
}

function billNotes({ billed }: ReportInput): Notes {
  return billed.flatMap(({ file, matched, placed, values, packages, differing, missing, unlisted }): Notes => {
    const told = (weight: ImportNote['weight'], code: ImportNote['code'], refdes: readonly string[]) =>
      refdes.length > 0 && { weight, code, file, refdes: [...refdes] };
    return [
      { weight: 'note', code: 'bill-merged', file, detail: { matched, placed, values, packages } },
      told('warn', 'bill-missing', missing),
      told('note', 'bill-differs', differing),
      told('note', 'bill-unlisted', unlisted),
    ];
  });
}

function placementNotes({
  registration,
  merged,
  legend,
  tables,
  panel,
  bottomYNegated,
  bottomYChosen,
}: ReportInput): Notes {
  const { assumedUnit, unitBy } = registration;
  const why = unitBy === 'pads' ? 'the parts then lie on their pads' : 'board and gaps then have a likely size';
  const inner = merged.placements.flatMap(({ side, refdes }) => (side === 'inner' ? [refdes] : []));
  return [
    unitBy === 'none' && { weight: 'stop', code: 'unit-not-told', detail: { unit: assumedUnit ?? 'mm' } },
    assumedUnit !== null &&
      unitBy !== 'chosen' &&
      unitBy !== 'none' && {
        weight: unitBy === 'pads' ? 'note' : 'warn',
        code: 'unit-guessed',
        detail: { unit: assumedUnit, why },
      },
    bottomYNegated && { weight: 'warn', code: 'bottom-y-negated' },
    ...signNotes(registration, bottomYChosen),
    registration.bottomNegated && {
      weight: 'note',
      code: 'bottom-negated',
      detail: {
        why:
          registration.bottomBy === 'pads'
            ? 'the parts then lie on their pads'
            : 'all of it is negative and none of the top',
      },
    },
    panel?.taken === 'all' && { weight: 'warn', code: 'panel-all', detail: { images: panel.images } },
    panel?.taken === 'one' && {
      weight: 'note',
      code: 'panel-one',
      refdes: panel.strays,
      detail: { images: panel.images, leftOut: panel.leftOut },
    },
    panel?.taken !== 'all' && about('warn', 'reference-twice', [...merged.renamed]),
    merged.repeated > 0 && {
      weight: 'note',
      code: 'same-in-two-files',
      file: tables.at(-1)?.file,
      detail: { count: merged.repeated },
    },
    about('warn', 'inner-layer', inner),
    about('note', 'legend', [...new Set(legend.map(({ refdes }) => refdes))]),
  ];
}

/** Bottom parts alone, all on the far side of an axis: counted downwards, or from the middle of a page? Only pads would tell. */
function signNotes(
  { placements, bottomBy, bottomNegated, offset }: ReportInput['registration'],
  bottomYChosen: boolean,
): Notes {
  const outside = placements.filter(({ side }) => side !== 'inner');
  const alone = outside.length > 0 && outside.every(({ side }) => side === 'bottom');
  if (!alone || offset !== null) return [];
  const axes = [
    bottomBy !== 'chosen' && !bottomNegated && outside.every(({ x }) => x <= 0) ? 'x' : '',
    !bottomYChosen && outside.every(({ y }) => y < 0) ? 'y' : '',
  ].filter(Boolean);
  return [axes.length > 0 && { weight: 'warn', code: 'bottom-sign-not-told', detail: { axis: axes.join(' and ') } }];
}

function frameNotes({ frame, layers }: ReportInput): Notes {
  const hasOutline = frame.choice !== null;
  const { copperLayers } = layers;
  return [
    hasOutline && frame.offset.by === 'none' && { weight: 'warn', code: 'offset-not-known' },
    frame.offset.by === 'corner' && {
      weight: 'warn',
      code: 'offset-by-corner',
      detail: { share: Math.round((frame.choice?.share ?? 0) * 100) },
    },
    copperLayers === null
      ? { weight: 'note', code: 'laminate-not-known' }
      : { weight: 'note', code: 'laminate-guessed', detail: { layers: copperLayers } },
  ];
}

function outlineNotes({ frame, contours, built, layers }: ReportInput): Notes {
  const { choice } = frame;
  const { outlineBroken, cutoutsBroken } = contours;
  if (outlineBroken) {
    return [{ weight: 'warn', code: 'outline-broken', detail: { reason: outlineBroken, margin: MARGIN_MM } }];
  }
  if (choice === null) return [{ weight: 'warn', code: 'no-outline', detail: { margin: MARGIN_MM } }];
  const polygon = flattenContour(contours.outline);
  const { shift } = contours;
  const off = built.filter(({ part }) => !insidePolygon({ x: part.x + shift.x, y: part.y + shift.y }, polygon));
  const declared = layers.outlines.some(({ file, declared: says }) => says && file === choice.outline.file);
  return [
    choice.why === 'best' && {
      weight: 'warn',
      code: 'outline-unsure',
      detail: { share: Math.round(choice.share * 100) },
    },
    choice.outline.gapMm > 0 && {
      weight: 'warn',
      code: 'outline-gap',
      detail: { gap: Math.round(choice.outline.gapMm * 1000) / 1000 },
    },
    choice.doubleMm > 0 && { weight: 'warn', code: 'outline-double', detail: { width: tidy(choice.doubleMm) } },
    cutoutsBroken > 0 && { weight: 'warn', code: 'cutouts-broken', detail: { count: cutoutsBroken } },
    choice.leftOut > 0 && { weight: 'note', code: 'loops-left', detail: { count: choice.leftOut } },
    !declared &&
      choice.cutouts.length > 0 && { weight: 'warn', code: 'cutouts-unsure', detail: { count: choice.cutouts.length } },
    about(
      'warn',
      'off-board',
      off.map(({ part }) => part.refdes),
    ),
  ];
}

function partNotes(built: readonly BuiltPart[]): Notes {
  const refs = (test: (one: BuiltPart) => boolean) => built.filter(test).map(({ part }) => part.refdes);
  const bodyless = (one: BuiltPart) => one.part.class === 'mark-on-board';
  return [
    about(
      'note',
      'not-fitted',
      refs(({ part }) => !part.fitted),
    ),
    about(
      'note',
      'middle-from-pads',
      refs(({ middle }) => middle !== null),
    ),
    about(
      'note',
      'array-by-grid',
      refs(({ land, part }) => land?.grid != null && ['bga', 'csp', 'lga'].includes(part.class)),
    ),
    about(
      'note',
      'size-by-unnamed-pads',
      refs(({ sizeBy }) => sizeBy === 'unnamedPads'),
    ),
    about(
      'warn',
      'size-by-first-pad',
      refs((one) => one.sizeBy === 'firstPad' && !bodyless(one)),
    ),
    about(
      'warn',
      'size-assumed',
      refs((one) => one.sizeBy === 'assumed' && !bodyless(one)),
    ),
    about(
      'note',
      'class-not-known',
      refs(({ part }) => part.class === 'unknown'),
    ),
  ];
}

/** Shield cans and frames: taken for covers, told but of unknown size, or parts that only lie over others like one. */
function coverNotes({ found }: ReportInput): Notes {
  const refs = (test: (one: ReportInput['found'][number]) => boolean) => found.filter(test).map(({ refdes }) => refdes);
  return [
    about(
      'note',
      'covers-found',
      refs(({ as }) => as !== 'part'),
    ),
    about(
      'warn',
      'cover-size-unknown',
      refs(({ as, by, lengthMm, chosen }) => as === 'part' && by !== 'over' && lengthMm === null && !chosen),
    ),
    about(
      'warn',
      'lies-over-parts',
      refs(({ as, by, under, chosen }) => as === 'part' && !chosen && (by === 'over' || under > 0)),
    ),
  ];
}

function checkNotes({ check, vote }: ReportInput): Notes {
  if (!check) return [];
  return [
    about('warn', 'turn-sense-open', [...vote.open]),
    about('warn', 'side-differs', [...check.side.wrong]),
    about(
      'warn',
      'turn-differs',
      check.turn.wrong.map(({ refdes }) => refdes),
    ),
    about('note', 'no-pads', [...check.withoutPads]),
    about('note', 'pads-only', [...check.padsOnly], { kinds: byLetters(check.padsOnly) }),
  ];
}
