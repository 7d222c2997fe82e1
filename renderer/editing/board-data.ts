import { produce } from 'immer';
import type { Board, Laminate } from '../../shared-types/board.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';

export function setBoardData(
  document: TicketDocument,
  fields: Partial<Pick<Board, 'name' | 'revision'>>,
): TicketDocument {
  return produce(document, (draft) => {
    Object.assign(draft.board, fields);
  });
}

export function setLaminate(
  document: TicketDocument,
  fields: Partial<Pick<Laminate, 'thicknessMm' | 'layersKnown'>>,
): TicketDocument {
  return produce(document, (draft) => {
    Object.assign(draft.board.laminate, fields);
  });
}

export type CopperLayer = Laminate['layers'][number];

export function setLayer(document: TicketDocument, index: number, fields: Partial<CopperLayer>): TicketDocument {
  return produce(document, (draft) => {
    const layer = draft.board.laminate.layers[index];
    if (!layer) return;
    Object.assign(layer, fields);
    if (layer.coverPercent === undefined) delete layer.coverPercent;
  });
}

/** Gives the board so many copper layers: the outer ones stay outside, planes are added or taken away in the middle. */
export function setLayerCount(document: TicketDocument, count: number): TicketDocument {
  const { layers } = document.board.laminate;
  const wanted = Math.max(0, Math.min(64, Math.round(count)));
  if (wanted === layers.length) return document;
  return produce(document, (draft) => {
    const drafted = draft.board.laminate.layers;
    while (drafted.length > wanted) drafted.splice(Math.floor(drafted.length / 2), 1);
    while (drafted.length < wanted) {
      const kind = drafted.length < 2 ? 'signal' : 'plane';
      drafted.splice(Math.ceil(drafted.length / 2), 0, { kind, copperUm: 35 });
    }
  });
}

export const POURS = ['few', 'some', 'everywhere'] as const;
export type Pours = (typeof POURS)[number];

/** Kinds of a stack by what a technician sees of its pours: which inner layers count as planes (assumption of ours). */
function kindsFor(pours: Pours, count: number): CopperLayer['kind'][] {
  return Array.from({ length: count }, (_, index) => {
    const outer = index === 0 || index === count - 1;
    if (pours === 'everywhere') return outer && count < 3 ? 'plane' : outer ? 'signal' : 'plane';
    if (outer || pours === 'few') return 'signal';
    return index % 2 === 1 ? 'plane' : 'signal';
  });
}

/** Lays the kinds of all layers by the pours, with the usual cover. */
export function setPours(document: TicketDocument, pours: Pours): TicketDocument {
  return produce(document, (draft) => {
    const { layers } = draft.board.laminate;
    const kinds = kindsFor(pours, layers.length);
    layers.forEach((layer, index) => {
      layer.kind = kinds[index];
      delete layer.coverPercent;
    });
  });
}

/** The pours that a stack looks like; null: its layers were told one by one. */
export function poursOf({ layers }: Laminate): Pours | null {
  if (layers.length === 0 || layers.some((layer) => layer.coverPercent !== undefined)) return null;
  const same = (pours: Pours) => kindsFor(pours, layers.length).every((kind, index) => kind === layers[index].kind);
  return POURS.find(same) ?? null;
}
