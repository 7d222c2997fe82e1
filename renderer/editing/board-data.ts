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
