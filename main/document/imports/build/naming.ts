import type { Recognised } from '../files/recognise.ts';

const MAX_NAME = 200;

/** The board's name: as given, or what the layers call the project, or what the file names share. */
export function boardName(files: readonly Recognised[], given: string | undefined): { name: string; revision: string } {
  const project = files
    .flatMap((file) => (file.kind === 'layer' ? [file.image.fileAttributes.get('.ProjectId')] : []))
    .find(Boolean);
  const revision = project?.[2] && project[2] !== 'rev?' ? project[2].slice(0, 100) : '';
  const name = given?.trim() || project?.[0]?.trim() || sharedName(namesFirst(files));
  return { name: name.slice(0, MAX_NAME) || 'board', revision };
}

/** The placement tables' names say the board's name best. */
function namesFirst(files: readonly Recognised[]): string[] {
  const names = (kind: Recognised['kind']) => files.filter((file) => file.kind === kind).map(({ name }) => name);
  return [...names('design'), ...names('placements'), ...names('layer'), ...names('netlist'), ...names('drawing')];
}

function usedNames(files: readonly Recognised[]): string[] {
  return files
    .filter(({ kind }) => ['design', 'placements', 'layer', 'netlist', 'drawing'].includes(kind))
    .map(({ name }) => name);
}

const ORDINARY =
  /pick[ _-]*(and|&)?[ _-]*place([ _-]*for)?|placements?|positions?|centroids?|(top|bottom)?[ _-]*pos\b/gi;

function sharedName(names: readonly string[]): string {
  const stems = names.map((name) => name.replace(/^.*[/\\]/, '').replace(/\.[^.]*$/, ''));
  if (stems.length === 0) return '';
  let prefix = stems[0];
  for (const stem of stems) while (!stem.startsWith(prefix)) prefix = prefix.slice(0, -1);
  const best = prefix.length >= 3 ? prefix : stems[0];
  const plain = best
    .replace(ORDINARY, ' ')
    .replace(/[\s_-]+/g, ' ')
    .trim();
  return plain || best;
}

const MAX_SOURCE = 500;

/** The files that the board was drawn from. */
export function drawnFrom(files: readonly Recognised[]): string {
  const text = usedNames(files).join(', ');
  return text.length <= MAX_SOURCE ? text : `${text.slice(0, MAX_SOURCE - 4)} ...`;
}
