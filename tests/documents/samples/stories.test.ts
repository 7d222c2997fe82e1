import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../../shared-types/plan.ts';
import { findingLine } from '../../../shared-types/words/findings.ts';
import { popplerMissing } from '../../support/pdf.ts';
import { linesOf, sheetOf, ticketOf, told, withTags } from '../../support/stories.ts';
import { off } from '../../support/tags.ts';

/** Three thousand parts on 1450 square centimetres, with other work beside it on two cores. */
const MINUTES = 180_000;

/** The acceptance stories: what the program must say of a ticket whose right answer is known beforehand. */
describe('signal-card: a thick card whose stiffener takes the heat', () => {
  const ticket = ticketOf('signal-card');
  let first: ReturnType<typeof told>;
  beforeAll(() => {
    first = told(ticket, 'coarse');
  }, MINUTES);

  it('is a card of about 3,000 parts, 14 layers and 2 mm, with a lidded array of 35 mm under a hood', () => {
    const { board, plan } = ticket;
    expect(board.parts.length).toBeGreaterThanOrEqual(2900);
    expect(board.laminate).toMatchObject({ thicknessMm: 2, layers: { length: 14 } });
    expect(plan.station.nozzle.kind).toBe('hood');
    const target = board.parts.find((part) => part.refdes === plan.sites[0].target)!;
    expect(target).toMatchObject({ class: 'bga-lidded', package: { lengthMm: 35 } });
  });

  it('says at first that the coldest corner stays below liquidus, and that the stiffener takes the heat', () => {
    expect(first.removal.verdict).not.toBe('melts');
    expect(first.removal.hottestJointC).toBeGreaterThan(first.removal.liquidusC);
    expect(findingLine(first.finding('target-does-not-melt')!)).toMatch(
      /coldest corner 2\d\d °C, \d+ °C below liquidus 220\. Take the stiffener off, it takes the heat/,
    );
  });

  it('reaches its windows with the stiffener off, and no longer blames it', () => {
    const bare = told(withTags(ticket, off('ST1')), 'coarse');
    for (const target of [bare.removal, bare.installation]) {
      expect(target.verdict).toBe('melts');
      expect(target.skinMaxC).toBeLessThan(target.skinLimitC);
    }
    expect(bare.removal.coldestJointC).toBeGreaterThanOrEqual(225);
    expect(bare.removal.coldestJointC).toBeLessThanOrEqual(230);
    expect(bare.installation.coldestJointC).toBeGreaterThanOrEqual(230);
    expect(bare.installation.coldestJointC).toBeLessThanOrEqual(245);
    expect(linesOf(bare.assessment)).not.toMatch(/stiffener/);
  });

  it('or with more preheat', () => {
    const warmer = (plan: Plan): Plan => ({
      ...plan,
      heatRuns: plan.heatRuns.map((run) => ({
        ...run,
        segments: run.segments.map((segment) => ({
          ...segment,
          preheater: {
            startC: segment.preheater.startC > 100 ? segment.preheater.startC + 45 : segment.preheater.startC,
            endC: segment.preheater.endC > 100 ? segment.preheater.endC + 45 : segment.preheater.endC,
          },
        })),
      })),
      station: { ...plan.station, preheater: { ...plan.station.preheater, largestC: 400 } },
    });
    const second = told({ ...ticket, plan: warmer(ticket.plan) }, 'coarse');
    expect(second.removal.verdict).toBe('melts');
    expect(second.removal.coldestJointC).toBeGreaterThan(first.removal.coldestJointC + 8);
  });

  it('warns that the 14 g coil on the underside will drop if molten (30 g per square inch: IPC TechNet 1996, 2002)', () => {
    const coil = ticket.board.parts.find((part) => part.massG === 14)!;
    expect(coil.side).toBe('bottom');
    expect(first.action(coil.refdes)).toMatchObject({ action: 'secure', reason: 'heavy-when-molten' });
    expect(Number(first.action(coil.refdes).figures.gramsPerSquareInch)).toBeCloseTo(14 / (96 / 645.16), 6);
  });
});

describe('ferry-gate-controller: a firmware memory between a plastic connector and a can', () => {
  const ticket = ticketOf('ferry-gate-controller');
  const first = told(ticket);

  it('melts its target in both windows and cooks it in none', () => {
    expect(first.removal.verdict).toBe('melts');
    expect(first.installation.verdict).toBe('melts');
    expect(first.codes).not.toContain('package-too-hot');
  });

  it('offers writing in circuit, two matching read-outs and the unit’s own data block', () => {
    expect(findingLine(first.finding('in-circuit-first')!)).toMatch(
      /written in circuit: no heat at all\..*twice until both agree.*data block that belongs to this unit/,
    );
  });

  it('finds the skin of the connector over PBT’s limit, and that a cap helps', () => {
    const advice = first.action('J1');
    expect(advice).toMatchObject({ action: 'shield', reason: 'shield-brings-it-under' });
    expect(advice.figures.judgedOn).toBe('skin');
    const real = told(
      withTags(ticket, {
        id: 's',
        kind: 'shield',
        refdes: 'J1',
        order: null,
        note: '',
        shield: String(advice.figures.shield),
      }),
    );
    const skin = real.assessment.evaluation.parts.find((part) => part.refdes === 'J1')!;
    expect(skin.margins.skin).toBeGreaterThan(3);
    // The shadow has no feedback on the board: under a real cap so large a body draws less through its joints.
    expect(skin.skin.maxC).toBeLessThan(Number(advice.figures.shieldedC));
    expect(skin.skin.maxC).toBeGreaterThan(Number(advice.figures.shieldedC) - 6);
  });

  it('takes the electrolytic off, a new one goes on', () => {
    expect(first.action('C1')).toMatchObject({ action: 'remove-first', reason: 'rated-for-one-reflow' });
  });

  it('cools the can when the gun heads away from it', () => {
    const leaning = (headingDeg: number): number => {
      const nozzle = { ...ticket.plan.station.nozzle, tiltDeg: 25, headingDeg } as Plan['station']['nozzle'];
      const plan = { ...ticket.plan, station: { ...ticket.plan.station, nozzle } };
      return told({ ...ticket, plan }, 'coarse').assessment.evaluation.parts.find((part) => part.refdes === 'C1')!.body
        .maxC;
    };
    expect(leaning(0)).toBeLessThan(leaning(180) - 20);
  });
});

describe('weighbridge-terminal: what should be declined', () => {
  const ticket = ticketOf('weighbridge-terminal');
  const first = told(ticket);

  it('says stop first: decline, or quote', () => {
    expect(first.codes[0]).toBe('decline-or-quote');
    expect(findingLine(first.assessment.findings[0])).toMatch(
      /^U2 cannot be saved, and the place of U1 .*Decline, or quote/,
    );
  });

  it.skipIf(popplerMissing)('prints that verdict on the first page of the sheet', async () => {
    const [firstPage] = await sheetOf(ticket, first.assessment);
    expect(firstPage).toMatch(/Stop: U2 cannot be saved, and the place of U1 .* Decline, or quote/);
  });

  it('names every reason: exchanged twice before, an underfilled neighbour 3 mm away that no shield saves', () => {
    expect(first.codes).toContain('exchanged-too-often');
    expect(first.action('U2')).toMatchObject({ action: 'cannot-be-saved', reason: 'underfill-softens' });
    const exposure = first.assessment.evaluation.parts.find((part) => part.refdes === 'U2')!;
    expect(exposure.clearanceMm).toBeGreaterThan(2.5);
    expect(exposure.clearanceMm).toBeLessThan(3.5);
    expect(exposure.ifShielded.jointMaxC).toBeGreaterThan(200);
  });

  it('wants the soldered can off in a heat run of its own', () => {
    expect(first.codes).toContain('soldered-can-over-target');
    const { plan } = ticket;
    const lift = { ...plan.heatRuns[0], id: 'run-0', name: 'Can off', kind: 'cover-removal' } as const;
    const own = told({ ...ticket, plan: { ...plan, heatRuns: [lift, ...plan.heatRuns] } });
    expect(own.codes).not.toContain('soldered-can-over-target');
  });

  it('sees the leaded balls of the donor, and asks for a bake by thickness, the board’s no hotter than its weakest part', () => {
    expect(findingLine(first.finding('alloys-differ')!)).toMatch(/SAC305 comes off and Sn63Pb37 goes on/);
    expect(findingLine(first.finding('floor-life-unknown')!)).toMatch(/Bake it 9 h at 125 °C/);
    expect(findingLine(first.finding('bake-first')!)).toMatch(/At most 40 °C: BT1/);
    const without = told(withTags(ticket, off('BT1')));
    expect(findingLine(without.finding('bake-first')!)).toMatch(/At most 90 °C: C\d+ \(Electrolytic/);
  });
});
