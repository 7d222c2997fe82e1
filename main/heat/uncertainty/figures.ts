import type { Evaluation } from '../../../shared-types/evaluation.ts';

/**
 * All figures of an evaluation that get a band, by name. Temperatures move evenly with the model's terms; figures that
 * count seconds start and stop (`isCount`).
 */
export type Figures = Map<string, number>;

export const figureName = {
  part: (refdes: string, figure: 'body' | 'skin' | 'joint' | 'over') => `part/${refdes}/${figure}`,
  target: (
    runId: string,
    siteId: string,
    figure: 'coldest' | 'hottest' | 'skin' | 'allAbove' | 'anyAbove' | 'molten',
  ) => `target/${runId}/${siteId}/${figure}`,
  watch: (runId: string, tagId: string, at: number | 'peak') => `watch/${runId}/${tagId}/${at}`,
  site: (runId: string, segment: number) => `site/${runId}/${segment}`,
};

/** True for a figure in seconds: it may be 0 on one side of a band and large on the other. */
export const isCount = (name: string): boolean => /\/(over|allAbove|anyAbove|molten|seconds)$/.test(name);

/** A figure in seconds, the temperature that it hangs on, and whether it grows with it. */
export type Hanging = { count: string; temperature: string; rises: boolean };

/** The figures in seconds of an evaluation, each with its temperature: that of the limit or liquidus it counts from. */
export function hangingFigures({ parts, runs }: Evaluation): Hanging[] {
  const ofParts = parts.map(({ refdes, governedBy }) => ({
    ...{ count: figureName.part(refdes, 'over'), temperature: figureName.part(refdes, governedBy), rises: true },
  }));
  const ofTargets = runs.flatMap(({ runId, targets }) =>
    targets.flatMap(({ siteId }): Hanging[] => {
      const name = (figure: Parameters<typeof figureName.target>[2]) => figureName.target(runId, siteId, figure);
      return [
        { count: name('allAbove'), temperature: name('coldest'), rises: true },
        { count: name('anyAbove'), temperature: name('hottest'), rises: true },
        { count: name('molten'), temperature: name('coldest'), rises: false },
      ];
    }),
  );
  return [...ofParts, ...ofTargets];
}

function runFigures(figures: Figures, { runs }: Evaluation): void {
  for (const { runId, targets, watch, segments } of runs) {
    for (const target of targets) {
      const name = (figure: Parameters<typeof figureName.target>[2]) => figureName.target(runId, target.siteId, figure);
      figures.set(name('coldest'), target.coldestJointC);
      figures.set(name('hottest'), target.hottestJointC);
      figures.set(name('skin'), target.skinMaxC);
      figures.set(name('allAbove'), target.secondsAllAbove);
      figures.set(name('anyAbove'), target.secondsAnyAbove);
      if (target.moltenAtS !== null) figures.set(name('molten'), target.moltenAtS);
    }
    for (const reading of watch) {
      figures.set(figureName.watch(runId, reading.tagId, 'peak'), reading.peakC);
      reading.atSegmentEndC.forEach((celsius, index) => {
        figures.set(figureName.watch(runId, reading.tagId, index), celsius);
      });
    }
    segments.forEach((segment, index) => {
      figures.set(figureName.site(runId, index), segment.siteC);
    });
  }
}

/** The figures of an evaluation by name. */
export function figuresOf(evaluation: Evaluation): Figures {
  const figures: Figures = new Map();
  for (const { refdes, body, skin, joint, secondsOver } of evaluation.parts) {
    figures.set(figureName.part(refdes, 'body'), body.maxC);
    figures.set(figureName.part(refdes, 'skin'), skin.maxC);
    figures.set(figureName.part(refdes, 'joint'), joint.maxC);
    figures.set(figureName.part(refdes, 'over'), secondsOver);
  }
  runFigures(figures, evaluation);
  return figures;
}
