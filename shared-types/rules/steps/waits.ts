import { coatedAtWork } from './before-heat.ts';
import { coverOver, isCell, runPairs, type StepContext } from './context.ts';
import { sitesOf } from './heat-runs.ts';
import type { StepDraft, StepKind, Wait, WaitReason } from './types.ts';

/** The drafts by kind, and how waits are written down. */
type Book = { of(...kinds: StepKind[]): StepDraft[]; waits: Wait[] };

const add = ({ waits }: Book, steps: readonly StepDraft[], on: readonly StepDraft[], reason: WaitReason): void => {
  for (const step of steps)
    for (const other of on) if (step.id !== other.id) waits.push({ step: step.id, on: other.id, reason });
};

const about = (drafts: readonly StepDraft[], refdes: string) => drafts.filter(({ parts }) => parts.includes(refdes));

/** Everything that melts solder by gas or preheater: the runs, and a can whose run the plan lacks. */
const heatsOf = (book: Book): StepDraft[] => [
  ...book.of('heat'),
  ...book.of('can-off').filter(({ phase }) => phase === 'covers'),
];

/** Heat that comes behind a phase: all of it for phases before the first run. */
function heatsBehind(context: StepContext, book: Book, phase: string): StepDraft[] {
  if (phase === 'before-heat') return heatsOf(book);
  const at = context.runs.findIndex(({ id }) => phase === `after:${id}` || phase === `run:${id}`);
  const later = new Set(context.runs.slice(at + 1).map(({ id }) => `heat:${id}`));
  return book.of('heat').filter(({ id }) => later.has(id));
}

function beforeHeat(context: StepContext, book: Book): void {
  const heats = heatsOf(book);
  const off = book.of('off', 'cover-off');
  const cells = off.filter(({ parts }) => isCell(context.parts.get(parts[0])));
  const board = book.of('bake-board');
  // A rail that is shorted is found before the supply feeds it.
  add(book, book.of('note-power'), book.of('note-resistance'), 'checks-before-power');
  add(book, book.of('power-off'), book.of('note-power'), 'note-before-off');
  add(book, off, book.of('note-resistance'), 'note-before-off');
  add(book, [...off, ...book.of('coating-off')], book.of('power-off'), 'power-off-first');
  add(book, [...heats, ...board], cells, 'cell-before-heat');
  for (const step of off) add(book, heatsBehind(context, book, step.phase), [step], 'off-before-heat');
  add(
    book,
    board,
    off.filter(({ phase }) => phase === 'before-heat'),
    'bake-weakest-off',
  );
  add(book, heats, board, 'bake-before-heat');
  add(book, heats, book.of('coating-off'), 'coating-before-heat');
  const coated = new Set(coatedAtWork(context).map(({ refdes }) => refdes));
  add(
    book,
    off.filter(({ parts }) => coated.has(parts[0])),
    book.of('coating-off'),
    'coating-before-iron',
  );
  add(book, book.of('gel'), board, 'bake-before-gel');
  for (const step of book.of('shield', 'gel', 'fence', 'secure'))
    add(book, heatsBehind(context, book, step.phase), [step], 'shield-before-heat');
  add(book, heats, book.of('set-up'), 'set-before-heat');
  for (const step of book.of('thermocouple'))
    add(book, heatsBehind(context, book, step.phase), [step], 'set-before-heat');
  const count = book.of('count-off');
  add(book, count, [...off, ...book.of('can-off')], 'count-after-off');
  for (const step of count) add(book, heatsBehind(context, book, step.phase), [step], 'count-before-heat');
}

/** What stands under a can is reached when the can is off. */
function underCans(context: StepContext, book: Book): void {
  const cans = book.of('can-off', 'cover-off');
  const reached: StepKind[] = ['off', 'shield', 'gel', 'fence', 'thermocouple', 'relocate', 'move-strap', 'lift'];
  for (const step of book.of(...reached)) {
    const over = step.parts.flatMap((refdes) => coverOver(context, refdes)?.cover.id ?? []);
    add(
      book,
      [step],
      cans.filter(({ parts }) => over.includes(parts[0])),
      'can-before-part',
    );
  }
  for (const run of context.runs) {
    if (run.kind === 'cover-removal') continue;
    const over = sitesOf(context, run).flatMap(({ target }) => coverOver(context, target)?.cover.id ?? []);
    const heat = book.of('heat').filter(({ id }) => id === `heat:${run.id}`);
    add(
      book,
      heat,
      cans.filter(({ parts }) => over.includes(parts[0])),
      'can-before-part',
    );
  }
  // A soldered can is heated with what is under it: only one that comes off by hand can come off before the coating.
  for (const step of book.of('coating-off')) {
    const over = step.parts.flatMap((refdes) => coverOver(context, refdes)?.cover.id ?? []);
    add(
      book,
      [step],
      book.of('cover-off').filter(({ parts }) => over.includes(parts[0])),
      'can-before-part',
    );
  }
  const back = book.of('cover-back');
  for (const step of book.of(
    'back',
    'program-part',
    'move-strap',
    'relocate',
    'inspect-joints',
    'inspect-reflowed',
    'shields-off',
  )) {
    const over = new Set(step.parts.flatMap((refdes) => coverOver(context, refdes)?.cover.id ?? []));
    add(
      book,
      back.filter(({ parts }) => over.has(parts[0])),
      [step],
      'under-before-cover',
    );
  }
}

function firmware(book: Book): void {
  const heats = heatsOf(book);
  const read = book.of('read-out');
  add(book, heats, read, 'read-out-before-heat');
  add(book, heats, book.of('in-circuit-first'), 'in-circuit-before-heat');
  for (const step of read) {
    const [refdes] = step.parts;
    add(book, about(book.of('off', 'lift'), refdes), [step], 'read-out-before-heat');
    add(book, about(book.of('data-block'), refdes), [step], 'block-from-read-out');
  }
  for (const block of book.of('data-block'))
    add(book, about(book.of('program-part', 'program-in-circuit'), block.parts[0]), [block], 'block-before-program');
  for (const program of book.of('program-part'))
    add(book, about(book.of('back'), program.parts[0]), [program], 'program-before-place');
  // The block is kept while the chip still sits where it answers.
  add(book, heats, book.of('data-block'), 'read-out-before-heat');
  add(book, book.of('program-in-circuit'), book.of('no-shorts'), 'shorts-before-programmer');
}

function insideRuns(context: StepContext, book: Book): void {
  const inRun = (kinds: StepKind[], runId: string) => book.of(...kinds).filter(({ phase }) => phase === `run:${runId}`);
  for (const run of context.runs) {
    const heat = inRun(['heat'], run.id);
    const lifted = inRun(['lift', 'can-off'], run.id);
    const dressed = inRun(['dress'], run.id);
    add(book, lifted, heat, 'melt-before-lift');
    add(book, dressed, heat, 'warm-before-dress');
    add(book, inRun(['cool'], run.id), [...heat, ...lifted, ...dressed], 'cool-after-heat');
    add(book, heat, inRun(['place'], run.id), 'place-before-heat');
  }
  for (const { earlier, later } of runPairs(context.plan)) {
    const cool = book.of('cool').filter(({ id }) => id === `cool:${earlier.id}`);
    add(
      book,
      book.of('heat').filter(({ id }) => id === `heat:${later.id}`),
      cool,
      'runs-in-order',
    );
  }
}

/** Between the old part and the new one, site by site, in the order of the runs. */
function atSites(context: StepContext, book: Book): void {
  for (const site of context.plan.sites) {
    const runs = context.runs.filter(({ siteIds }) => siteIds.includes(site.id));
    let lift: StepDraft[] = [];
    let inspected: StepDraft[] = [];
    for (const run of runs) {
      const named = (kind: StepKind) => book.of(kind).filter(({ id }) => id === `${kind}:${run.id}:${site.target}`);
      const cool = book.of('cool').filter(({ id }) => id === `cool:${run.id}`);
      if (run.kind === 'removal') lift = named('lift');
      add(book, named('dress'), lift, 'lift-before-dress');
      if (run.kind === 'removal') add(book, named('dress'), cool, 'cold-before-touch');
      add(book, named('inspect-pads'), named('dress'), 'dress-before-inspect');
      add(book, named('inspect-pads'), cool, 'cold-before-touch');
      if (named('inspect-pads').length > 0) inspected = named('inspect-pads');
      const place = named('place');
      add(book, place, inspected, 'inspect-before-place');
      add(book, place, named('incoming'), 'part-before-place');
      add(book, place, about(book.of('program-part'), site.target), 'program-before-place');
      add(book, place, about(book.of('bake-part'), site.target), 'bake-before-solder');
    }
  }
}

function afterHeat(context: StepContext, book: Book): void {
  const last = context.runs.at(-1);
  const cool = book.of('cool').filter(({ id }) => id === `cool:${last?.id}`);
  const moves = book.of('move-strap', 'relocate');
  /** Parts that are off only to be written: off and soldered again in that step. */
  const written = book.of('program-part').filter(({ figures }) => figures.alone === 1);
  add(
    book,
    [...written, ...book.of('shields-off', 'inspect-joints', 'back', 'cover-back', 'inspect-reflowed', 'clean')],
    cool,
    'cold-before-touch',
  );
  add(
    book,
    moves.filter(({ figures }) => figures.near === 1),
    cool,
    'strap-after-heat',
  );
  for (const step of moves) {
    if (step.figures.waits === 1 || !step.figures.to) continue;
    add(
      book,
      [step],
      moves.filter(({ figures, id }) => id !== step.id && figures.from === step.figures.to),
      'strap-ring',
    );
  }
  add(book, book.of('cover-back'), book.of('clean'), 'clean-before-cover');
  const on = book.of('back', 'cover-back');
  add(book, book.of('count-back'), on, 'back-before-count');
  add(book, book.of('clean'), [...moves, ...written, ...book.of('back')], 'soldered-before-clean');
  add(book, book.of('no-shorts', 'polarity'), [...on, ...moves, ...written, ...cool], 'on-before-check');
  for (const step of book.of('strap-read'))
    add(
      book,
      [step],
      moves.filter(({ parts }) => parts.some((refdes) => step.parts.includes(refdes))),
      'strap-before-read',
    );
}

function atPower(book: Book): void {
  const supply = book.of('supply');
  add(book, supply, book.of('no-shorts', 'polarity', 'strap-read', 'program-in-circuit'), 'checks-before-power');
  add(book, supply, book.of('clean'), 'clean-before-power');
  add(book, supply, book.of('count-back'), 'counted-before-power');
  const reports = book.of('read-back', 'strap-report');
  add(book, [...book.of('current'), ...reports], supply, 'supply-first');
  add(book, book.of('cell-back'), book.of('current'), 'current-before-cell');
  const test = book.of('function-test');
  add(book, test, [...supply, ...book.of('current', 'cell-back'), ...reports], 'all-before-test');
  const coat = book.of('coat-again');
  add(book, coat, book.of('clean'), 'clean-before-coat');
  add(book, coat, test, 'test-before-coat');
  add(book, book.of('hand-back'), test, 'test-before-hand-back');
  add(book, book.of('hand-back'), coat, 'coat-before-hand-back');
}

/** What has to come before what, and why. */
export function waitsOf(context: StepContext, drafts: readonly StepDraft[]): Wait[] {
  const byKind = new Map<StepKind, StepDraft[]>();
  for (const one of drafts) byKind.set(one.kind, [...(byKind.get(one.kind) ?? []), one]);
  const book: Book = { waits: [], of: (...kinds) => kinds.flatMap((kind) => byKind.get(kind) ?? []) };
  beforeHeat(context, book);
  underCans(context, book);
  firmware(book);
  insideRuns(context, book);
  atSites(context, book);
  afterHeat(context, book);
  atPower(book);
  return book.waits;
}
