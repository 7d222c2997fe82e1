import { produce } from 'immer';
import type { Nozzle, Preheater, Station, TicketDocument } from '../../shared-types/plan.ts';

export function setStation(
  document: TicketDocument,
  fields: Partial<Omit<Station, 'nozzle' | 'preheater'>>,
): TicketDocument {
  return produce(document, (draft) => {
    Object.assign(draft.plan.station, fields);
  });
}

/** Changes figures of the nozzle; fields that its kind does not have are passed over. */
export function setNozzle(document: TicketDocument, fields: Partial<Record<string, number>>): TicketDocument {
  return produce(document, (draft) => {
    const nozzle = draft.plan.station.nozzle as Record<string, unknown>;
    for (const [name, value] of Object.entries(fields)) if (name in nozzle && value !== undefined) nozzle[name] = value;
  });
}

/** A nozzle of another kind that keeps what the two have in common: size, stand-off, tilt. */
export function setNozzleKind(document: TicketDocument, kind: Nozzle['kind']): TicketDocument {
  const { nozzle } = document.plan.station;
  if (nozzle.kind === kind) return document;
  return produce(document, (draft) => {
    draft.plan.station.nozzle = nozzleOfKind(kind, nozzle);
  });
}

function nozzleOfKind(kind: Nozzle['kind'], from: Nozzle): Nozzle {
  const held = 'tiltDeg' in from ? from : { tiltDeg: 0, headingDeg: 0 };
  const common = { standOffMm: from.standOffMm, tiltDeg: held.tiltDeg, headingDeg: held.headingDeg };
  const size =
    from.kind === 'round'
      ? { lengthMm: from.diameterMm, widthMm: from.diameterMm, turnDeg: 0 }
      : { lengthMm: from.lengthMm, widthMm: from.widthMm, turnDeg: from.turnDeg };
  const sweepRadiusMm = 'sweepRadiusMm' in from ? from.sweepRadiusMm : 0;
  if (kind === 'round') return { kind, diameterMm: Math.min(size.lengthMm, size.widthMm), ...common, sweepRadiusMm };
  if (kind === 'rectangular') return { kind, ...size, ...common, sweepRadiusMm };
  if (kind === 'hood') return { kind, ...size, ...common, filmAt30LMin: 100, rimGapMm: 1, leak: 0.2 };
  return { kind, ...size, standOffMm: from.standOffMm, emissivity: EMITTER_EMISSIVITY };
}

/** Of a dark ceramic or quartz emitter (common practice, no source). */
const EMITTER_EMISSIVITY = 0.9;

export function setPreheater(document: TicketDocument, fields: Partial<Preheater>): TicketDocument {
  return produce(document, (draft) => {
    Object.assign(draft.plan.station.preheater, fields);
  });
}

/** Another station in place of the present one; flows of the profiles stay as they are. */
export function takeStation(document: TicketDocument, station: Station): TicketDocument {
  return produce(document, (draft) => {
    draft.plan.station = structuredClone(station);
  });
}

type FlowLevel = Station['flowLevels'][number];

/** The dial's levels; segments that blew at a level whose flow changed follow it. */
export function setFlowLevel(document: TicketDocument, index: number, fields: Partial<FlowLevel>): TicketDocument {
  const before = document.plan.station.flowLevels[index];
  if (!before) return document;
  return produce(document, (draft) => {
    Object.assign(draft.plan.station.flowLevels[index], fields);
    const { flowLMin } = fields;
    if (flowLMin === undefined) return;
    for (const { segments } of draft.plan.heatRuns)
      for (const segment of segments)
        if (segment.gas && segment.flowLMin === before.flowLMin) segment.flowLMin = flowLMin;
  });
}

/** Film and lag as fitted; null: back to those of its kind. */
export function setPreheaterFit(
  document: TicketDocument,
  fit: { filmWm2K: number; lagS: number } | null,
): TicketDocument {
  return produce(document, (draft) => {
    const { preheater } = draft.plan.station;
    delete preheater.filmWm2K;
    delete preheater.lagS;
    if (fit) Object.assign(preheater, { filmWm2K: round(fit.filmWm2K), lagS: round(fit.lagS) });
  });
}

const round = (value: number): number => Math.round(value * 10) / 10;
