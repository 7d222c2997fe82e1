import { expect, it } from 'vitest';
import { removeSites, takeClassHeights } from '../../../../renderer/editing/health-fixes.ts';
import { addSiteOn } from '../../../../renderer/editing/sites.ts';
import { classById } from '../../../../shared-types/library/classes.ts';
import { emptyPlan } from '../../../../shared-types/rules/new-plan.ts';
import { boardWith, partNamed } from '../../../support/boards.ts';

const bare = { name: '', shape: 'rectangle' as const, lengthMm: 1, widthMm: 0.5, heightMm: null };

it('takes missing heights from classes that have one, and leaves known heights and other parts alone', () => {
  const document = {
    plan: emptyPlan('T-1'),
    board: boardWith([
      partNamed('U1', { package: bare }),
      partNamed('U2', { package: bare, class: 'unknown' }),
      partNamed('U3'),
      partNamed('U4', { package: bare }),
    ]),
  };
  const { parts } = takeClassHeights(document, ['U1', 'U2', 'U3']).board;
  expect(parts.map((part) => part.package.heightMm)).toEqual([classById('bga').defaultHeightMm, null, 1.2, null]);
});

it('takes several sites out with their tags', () => {
  const start = { plan: emptyPlan('T-1'), board: boardWith([partNamed('U1'), partNamed('U2', { x: 20 })]) };
  const marked = addSiteOn(addSiteOn(start, 'U1'), 'U2');
  const ids = marked.plan.sites.map(({ id }) => id);
  const { plan } = removeSites(marked, ids);
  expect({ sites: plan.sites, tags: plan.tags, runs: plan.heatRuns }).toEqual({ sites: [], tags: [], runs: [] });
});
