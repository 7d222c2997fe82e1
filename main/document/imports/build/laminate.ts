import { defaultLaminate, type Laminate } from '../../../../shared-types/board.ts';

const MAX_LAYERS = 64;

/** Copper layers counted by the layers' own numbers (`Copper,L6,Bot`); null when no file says. */
export function countLayers(fileFunctions: readonly (readonly string[])[]): number | null {
  const numbers = fileFunctions.flatMap(([kind, layer]) => {
    const match = kind === 'Copper' ? /^L(\d+)$/.exec(layer ?? '') : null;
    return match ? [Number(match[1])] : [];
  });
  const count = Math.max(0, ...numbers);
  return count >= 1 && count <= MAX_LAYERS ? count : null;
}

/** A laminate of that many layers: outer and middle ones signal, those next to the outer ones planes. A guess. */
export function laminateOf(count: number | null): Laminate {
  const usual = defaultLaminate();
  if (count === null) return usual;
  const [outer, inner] = usual.layers;
  const layers = Array.from({ length: count }, (_, index) =>
    count > 2 && (index === 1 || index === count - 2) ? inner : outer,
  );
  return { ...usual, layers: layers.map((layer) => ({ ...layer })) };
}
