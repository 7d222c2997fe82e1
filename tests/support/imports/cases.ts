import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** One import: some of the files of a board's folder, together. */
export interface ImportCase {
  readonly board: string;
  readonly what: string;
  readonly paths: readonly string[];
  /** Files that can show an outline, and pads, are among them. */
  readonly layers: boolean;
}

type Kind = 'placements' | 'Gerber' | 'netlist' | 'design' | 'bill' | 'drawing' | 'other';

/** By endings and names in use; the importer looks at the content instead. */
function kindOf(name: string): Kind {
  if (/\.(g[a-z0-9]{2}|gbr|zip)$/i.test(name)) return 'Gerber';
  if (/\.(d356|ipc)$/i.test(name)) return 'netlist';
  if (/\.(xml|cvg)$/i.test(name)) return 'design';
  if (/\.(dxf|svg)$/i.test(name)) return 'drawing';
  if (/bom|bill/i.test(name)) return 'bill';
  if (/\.(pos|xy|mnt|mnb)$|-pos\.csv$|pick.?(and|&)?.?place|position/i.test(name)) return 'placements';
  return 'other';
}

/** Every sensible import of one folder: the whole, each kind by itself and together with the layers. */
export function casesOf(board: string, folder: string): ImportCase[] {
  const names = readdirSync(folder).filter(
    (name) => statSync(join(folder, name)).isFile() && !/\.(png|jpe?g)$/i.test(name),
  );
  const of = (...kinds: Kind[]): string[] =>
    names.filter((name) => kinds.includes(kindOf(name))).map((name) => join(folder, name));
  const separate = of('design', 'drawing');
  if (separate.length > 0) {
    return separate.map((path) => ({
      board: `${board}/${path.slice(folder.length + 1)}`,
      what: 'alone',
      paths: [path],
      layers: true,
    }));
  }
  const combinations: readonly [string, Kind[]][] = [
    ['placements', ['placements']],
    ['Gerber', ['Gerber']],
    ['placements, Gerber', ['placements', 'Gerber']],
    ['netlist', ['netlist']],
    ['netlist, Gerber', ['netlist', 'Gerber']],
    ['placements, netlist', ['placements', 'netlist']],
    ['Gerber, bill', ['Gerber', 'bill']],
  ];
  if (names.every((name) => kindOf(name) === 'other')) return [];
  const layers = of('Gerber').length > 0;
  const whole: ImportCase = { board, what: 'whole folder', paths: names.map((name) => join(folder, name)), layers };
  const some = combinations
    .filter(([, kinds]) => kinds.every((kind) => of(kind).length > 0))
    .map(([what, kinds]): ImportCase => ({ board, what, paths: of(...kinds), layers: kinds.includes('Gerber') }));
  return [whole, ...some];
}
