import type { ImportFacts } from '../../../../shared-types/import-report.ts';
import type { ReportInput } from './report.ts';

/** What the files tell of the board at all, so that an update of another drawing takes nothing else from them. */
export function toldBy(input: ReportInput): ImportFacts['told'] {
  const { built, frame, contours, layers, registration, design, merged, billed, tables, files } = input;
  const names = (test: (one: ReportInput['built'][number]) => boolean) =>
    built.filter(test).map(({ part }) => part.refdes);
  const listed = new Set(files.flatMap((file) => (file.kind === 'bill' ? [...file.bill.lines.keys()] : [])));
  const columned = new Set(
    tables.flatMap(({ file, columns }) => (columns.some(({ meaning }) => meaning === 'fitted') ? [file] : [])),
  );
  return {
    sides: (['top', 'bottom'] as const).filter((side) => built.some(({ part }) => part.side === side)),
    // Where a cutout is damaged the files no more tell which there are.
    outline: frame.choice !== null && contours.cutoutsBroken === 0,
    turns: design !== null || registration.offset?.by !== 'own',
    layers: layers.copperLayers !== null,
    fitted: names(({ placement }) => columned.has(placement.file) || design !== null || listed.has(placement.refdes)),
    heights: names(({ placement }) => placement.heightMm !== null),
    sizeless: names(({ sizeBy }) => sizeBy === 'assumed' || sizeBy === 'firstPad'),
    doubles: [...merged.doubles].map(([refdes, all]) => ({ refdes, all: [...all] })),
    unplaced: billed.flatMap(({ missing }) => missing),
  };
}
