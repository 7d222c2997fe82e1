import { expect, test } from 'vitest';
import { POURS, poursOf, setLayer, setLayerCount, setPours } from '../../../../renderer/editing/board-data.ts';
import { addRun, runById, setRunSite } from '../../../../renderer/editing/heat-runs.ts';
import { addSiteOn } from '../../../../renderer/editing/sites.ts';
import { setFlowLevel, setNozzleKind, setPreheaterFit, takeStation } from '../../../../renderer/editing/station.ts';
import { STATION_PRESETS } from '../../../../shared-types/library/stations.ts';
import { stationSchema } from '../../../../shared-types/plan.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';
import { smallDocument } from './sample-document.ts';

test('every station to begin from is valid, and is taken whole', () => {
  for (const preset of STATION_PRESETS) {
    expect(stationSchema.parse(preset)).toEqual(preset);
    expect(takeStation(smallTicket(), preset).plan.station).toEqual(preset);
  }
  expect(new Set(STATION_PRESETS.map((one) => one.nozzle.kind))).toEqual(new Set(['round', 'hood', 'infrared']));
});

test('a level whose flow is measured takes the segments along that blew at it', () => {
  const start = takeStation(smallTicket(), STATION_PRESETS[0]);
  const [, mid] = start.plan.station.flowLevels;
  const runs = start.plan.heatRuns.map((run) => ({
    ...run,
    segments: run.segments.map((segment) => ({ ...segment, flowLMin: segment.gas ? mid.flowLMin : 0 })),
  }));
  const document = { ...start, plan: { ...start.plan, heatRuns: runs } };
  const next = setFlowLevel(document, 1, { flowLMin: 46 });
  const flows = next.plan.heatRuns.flatMap((run) => run.segments).map(({ gas, flowLMin }) => [gas !== null, flowLMin]);
  expect(flows.some(([blows]) => blows)).toBe(true);
  for (const [blows, flow] of flows) expect(flow).toBe(blows ? 46 : 0);
  expect(setFlowLevel(document, 1, { name: 'middle' }).plan.heatRuns).toEqual(document.plan.heatRuns);
});

test('a fit is kept to a tenth and taken back', () => {
  const fitted = setPreheaterFit(smallTicket(), { filmWm2K: 31.26, lagS: 88.04 });
  expect(fitted.plan.station.preheater).toMatchObject({ filmWm2K: 31.3, lagS: 88 });
  expect(setPreheaterFit(fitted, null).plan.station.preheater).toEqual(smallTicket().plan.station.preheater);
});

test('a nozzle becomes an emitter of its size and back, held upright', () => {
  const emitter = setNozzleKind(smallTicket(), 'infrared').plan.station.nozzle;
  expect(emitter).toMatchObject({ kind: 'infrared', emissivity: 0.9 });
  expect(setNozzleKind(setNozzleKind(smallTicket(), 'infrared'), 'round').plan.station.nozzle).toMatchObject({
    kind: 'round',
    tiltDeg: 0,
  });
});

test('pours lay the kinds of the layers, and a stack says which it looks like', () => {
  const document = setLayerCount(smallTicket(), 6);
  for (const pours of POURS) {
    const { laminate } = setPours(document, pours).board;
    expect(poursOf(laminate)).toBe(pours);
    expect(laminate.layers).toHaveLength(6);
  }
  const kinds = (pours: (typeof POURS)[number]) =>
    setPours(document, pours)
      .board.laminate.layers.map((layer) => layer.kind[0])
      .join('');
  expect(kinds('everywhere')).toBe('spppps');
  expect(kinds('some')).toBe('spspss');
  expect(kinds('few')).toBe('ssssss');
  expect(poursOf(setLayer(document, 1, { coverPercent: 35 }).board.laminate)).toBeNull();
});

test('a site that is taken into a run is heated there, and goes with its stretches', () => {
  const two = addSiteOn(addSiteOn(smallDocument(), 'U1'), 'U2');
  const [first, second] = two.plan.sites;
  const blows = (document: typeof two, runId: string) =>
    runById(document, runId)!.segments.flatMap(({ gas, siteId }) => (gas ? [siteId] : []));
  const added = addRun(two, 'removal', 'top', 'Once more');
  const runId = added.plan.heatRuns.at(-1)!.id;
  expect(blows(added, runId)).toEqual([first.id, first.id, second.id, second.id]);
  const without = setRunSite(added, runId, second.id, false);
  expect(blows(without, runId)).toEqual([first.id, first.id]);
  const again = setRunSite(without, runId, second.id, true);
  expect(blows(again, runId)).toEqual([first.id, first.id, second.id, second.id]);
  expect(runById(again, runId)!.segments.at(-1)!.gas).toBeNull();
});
