import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../main/heat/evaluate.ts';
import { sampleFiles } from '../../../sample-boards/make/files.ts';
import { classById, isClassId } from '../../../shared-types/library/classes.ts';
import { shieldById } from '../../../shared-types/library/shields.ts';
import { boardFault } from '../../../shared-types/rules/board-faults.ts';
import { planFault } from '../../../shared-types/rules/plan-faults.ts';
import { crowdedPairs, misplaced, readSample, SAMPLE_NAMES, textOf } from './boards.ts';

const EDGE_CLASSES = /^connector|^metal-can$/;

describe('the committed samples', () => {
  it('are what the scripts write', () => {
    const files = sampleFiles();
    expect(Object.keys(files).length).toBeGreaterThanOrEqual(7);
    for (const [name, content] of Object.entries(files)) {
      const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
      expect(Buffer.compare(readFileSync(`sample-boards/${name}`), bytes), name).toBe(0);
    }
  });

  it('come out the same twice', () => {
    expect(sampleFiles()).toEqual(sampleFiles());
  });
});

describe.each(SAMPLE_NAMES)('%s', (name) => {
  const { board, plan } = readSample(name);

  it('passes the published JSON Schemas (checked by ajv, which shares no code with the program)', () => {
    for (const [kind, document] of [
      ['board', board],
      ['plan', plan],
    ] as const) {
      const validate = new Ajv2020({ strict: true, allErrors: true }).compile(
        JSON.parse(textOf(`${kind}.schema.json`)),
      );
      expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
      expect(validate({ ...document, surplus: 1 })).toBe(false);
      expect(validate({ ...document, version: 99 })).toBe(false);
    }
  });

  it('has no fault a reader would find', () => {
    expect(boardFault(board)).toBeNull();
    expect(planFault(plan)).toBeNull();
    expect(board.source.invented).toBe(true);
    expect(plan.ticket.notes).toContain('invented');
    expect(plan.ticket.customer).toContain('Invented');
  });

  it('lets nothing overlap: bodies of one side keep 0.25 mm', () => {
    expect(crowdedPairs(board, 0.25)).toEqual([]);
  });

  it('keeps parts on the board and out of cutouts; only connectors stand over the edge, on it', () => {
    const { overEdge, inCutout } = misplaced(board);
    expect(inCutout.map((part) => part.refdes)).toEqual([]);
    expect(overEdge.filter((part) => !EDGE_CLASSES.test(part.class)).map((part) => part.refdes)).toEqual([]);
    expect(overEdge.length).toBeGreaterThan(1);
  });

  it('names only classes, shields, parts and empty positions that exist', () => {
    const parts = new Map(board.parts.map((part) => [part.refdes, part]));
    for (const part of board.parts) expect(isClassId(part.class), part.refdes).toBe(true);
    for (const site of plan.sites) expect(parts.get(site.target)).toMatchObject({ side: site.side, fitted: true });
    for (const tag of plan.tags) {
      if (tag.refdes !== null) expect(parts.has(tag.refdes), tag.id).toBe(true);
      if (tag.kind === 'shield') expect(shieldById(tag.shield), tag.id).toBeDefined();
    }
    expect(new Set(plan.tags.map((tag) => tag.id)).size).toBe(plan.tags.length);
  });

  it('takes off first what always comes off, with a slot in the tray', () => {
    const always = board.parts.filter((part) => part.fitted && classById(part.class).alwaysRemove);
    expect(always.length).toBeGreaterThan(0);
    for (const part of always) {
      const tag = plan.tags.find((one) => one.kind === 'remove' && one.refdes === part.refdes);
      expect(tag?.kind === 'remove' && tag.traySlot, part.refdes).toBeTruthy();
    }
  });

  it('melts its targets inside the window, without cooking them', () => {
    const result = evaluate(board, plan, { phase: 'fine' });
    if (!result.ok) throw new Error(JSON.stringify(result.problem));
    const targets = result.value.runs.flatMap((run) => run.targets);
    expect(targets).toHaveLength(2 * plan.sites.length);
    for (const target of targets) {
      expect(target.verdict).toBe('melts');
      expect(target.coldestJointC, target.refdes).toBeGreaterThanOrEqual(target.windowC!.from);
      expect(target.coldestJointC, target.refdes).toBeLessThanOrEqual(target.windowC!.to);
      expect(target.skinMaxC, target.refdes).toBeLessThan(target.skinLimitC);
    }
    const reflowing = result.value.parts.filter((part) => part.reflow !== 'none').length;
    expect(reflowing).toBeGreaterThan(20);
  });
});

describe('greenhouse-gateway as the acceptance story tells it', () => {
  const { board, plan } = readSample('greenhouse-gateway');
  const fitted = board.parts.filter((part) => part.fitted);

  it('is double-sided, about 250 parts, with a can, cutouts, arcs and empty positions', () => {
    expect(fitted.length).toBeGreaterThan(240);
    expect(fitted.length).toBeLessThan(290);
    expect(fitted.filter((part) => part.side === 'bottom').length).toBeGreaterThan(40);
    expect(board.covers.some((cover) => cover.kind === 'can')).toBe(true);
    expect(board.cutouts.length).toBeGreaterThan(4);
    expect(board.outline.some((corner) => corner.bulge)).toBe(true);
    expect(board.parts.length - fitted.length).toBeGreaterThanOrEqual(3);
  });

  it('exchanges one processor and two memories in one heat run', () => {
    expect(
      plan.sites.map((site) => classById(board.parts.find((p) => p.refdes === site.target)!.class).arrayPart),
    ).toEqual([true, true, true]);
    for (const run of plan.heatRuns) expect(run.siteIds).toHaveLength(3);
    expect(plan.tags.filter((tag) => tag.kind === 'watchPoint').map((tag) => tag.name)).toEqual(['W1', 'W2', 'W3']);
  });

  it('has a strap group of five positions, some empty', () => {
    const straps = ['R101', 'R102', 'R103', 'R104', 'R105'].map(
      (id) => board.parts.find((part) => part.refdes === id)!,
    );
    expect(straps.filter((part) => part.fitted)).toHaveLength(3);
    expect(new Set(straps.map((part) => part.y)).size).toBe(1);
  });

  it('stands its bypass parts in rows round and under the array', () => {
    const { x, y } = board.parts.find((part) => part.refdes === plan.sites[0].target)!;
    const near = board.parts.filter(
      (part) => part.class === 'chip-capacitor' && Math.max(Math.abs(part.x - x), Math.abs(part.y - y)) < 12,
    );
    expect(near.filter((part) => part.side === 'top').length).toBeGreaterThan(18);
    expect(near.filter((part) => part.side === 'bottom').length).toBeGreaterThan(18);
  });
});
