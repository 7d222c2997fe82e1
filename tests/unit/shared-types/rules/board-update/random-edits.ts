import { randomBoard } from '../../../../../sample-boards/make/random-board.ts';
import type { Board, Part } from '../../../../../shared-types/board.ts';
import type { ImportFacts } from '../../../../../shared-types/import-report.ts';
import { boardIn, type Frame } from '../../../../../shared-types/rules/board-frame.ts';
import type { PartAspect } from '../../../../../shared-types/rules/board-update/types.ts';
import { uniforms } from '../../../../support/heat/random.ts';

type Told = ImportFacts['told'];

/** Files that tell everything of a board. */
export const tellingAll = (board: Board): Told => ({
  sides: ['top', 'bottom'],
  ...{ outline: true, turns: true, layers: true },
  fitted: board.parts.map(({ refdes }) => refdes),
  heights: board.parts.map(({ refdes }) => refdes),
  ...{ sizeless: [], doubles: [], unplaced: [] },
});

/** A board and an edited copy of it in a frame of its own, with every edit known. */
export type Edited = {
  readonly ticket: Board;
  readonly files: Board;
  readonly told: Told;
  /** From the files' frame to the ticket's. */
  readonly frame: Frame;
  readonly edits: ReadonlyMap<string, PartAspect>;
  readonly added: readonly string[];
  readonly gone: readonly string[];
};

const EDITS: Record<PartAspect, (part: Part) => Part> = {
  place: (part) => ({ ...part, x: part.x + 1.3, y: part.y - 0.4 }),
  turn: (part) => ({ ...part, turn: (part.turn + 180) % 360 }),
  side: (part) => ({ ...part, side: part.side === 'top' ? 'bottom' : 'top' }),
  // Not by a swap of the sides: that is the same body described otherwise.
  size: (part) => ({ ...part, package: { ...part.package, lengthMm: part.package.lengthMm + part.package.widthMm } }),
  package: (part) => ({ ...part, package: { ...part.package, name: `${part.package.name}-B` } }),
  value: (part) => ({ ...part, value: `${part.value || '1'}-B` }),
  height: (part) => ({ ...part, package: { ...part.package, heightMm: (part.package.heightMm ?? 1) + 0.7 } }),
  fitted: (part) => ({ ...part, fitted: !part.fitted }),
  pins: (part) => ({ ...part, pinCount: (part.pinCount ?? 2) + 1 }),
};
const ASPECTS = Object.keys(EDITS) as PartAspect[];

/** Undoes a frame: what lies at P in the ticket lies at the result in the files. */
function inverse({ mirror, over, quarters, by }: Frame): Frame {
  // Mirroring first and turning then is undone by turning back first: for a mirror that is the same quarters again.
  const back = (mirror ? quarters : (4 - quarters) % 4) as Frame['quarters'];
  const turnedBy = [
    { x: by.x, y: by.y },
    { x: -by.y, y: by.x },
    { x: -by.x, y: -by.y },
    { x: by.y, y: -by.x },
  ];
  const moved = turnedBy[back];
  const flipped = mirror
    ? [
        { x: -by.x, y: by.y },
        { x: -by.y, y: -by.x },
        { x: by.x, y: -by.y },
        { x: by.y, y: by.x },
      ][quarters]
    : moved;
  return { mirror, ...(over ? { over } : {}), quarters: back, by: { x: -flipped.x, y: -flipped.y } };
}

/** A random board; about a third of its parts edited in one way each, some gone, some new, all in another frame. */
export function editedBoard(seed: number, count: number): Edited {
  const random = uniforms(seed);
  const ticket = randomBoard(seed, count);
  const pick = (most: number) => Math.floor(random() * most);
  const edits = new Map<string, PartAspect>();
  const gone: string[] = [];
  const parts = ticket.parts.flatMap((part): Part[] => {
    const roll = random();
    if (roll < 0.06) {
      gone.push(part.refdes);
      return [];
    }
    if (roll > 0.4) return [part];
    const aspect = ASPECTS[pick(ASPECTS.length)];
    edits.set(part.refdes, aspect);
    return [EDITS[aspect](part)];
  });
  const added = [1, 2, 3].map((number) => ({ ...ticket.parts[0], refdes: `NEW${number}`, x: 3 * number, y: 2 }));
  const mirror = random() < 0.5;
  const over = mirror && random() < 0.5;
  const by = { x: Math.round(random() * 2e5 - 1e5) / 1e3, y: Math.round(random() * 2e5 - 1e5) / 1e3 };
  const frame: Frame = { mirror, ...(over ? { over } : {}), quarters: pick(4) as Frame['quarters'], by };
  const files = boardIn(inverse(frame), { ...ticket, parts: [...parts, ...added] });
  return { ticket, files, told: tellingAll(files), frame, edits, added: added.map(({ refdes }) => refdes), gone };
}
