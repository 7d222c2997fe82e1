/** The figures a sentence needs, as the evaluation and planning hand them over. */
export type Figures = Readonly<Record<string, number | string>>;

/** A number among the figures; NaN when it is missing, which sentences print as '?'. */
export function numberOf(figures: Figures, name: string): number {
  const value = figures[name];
  return typeof value === 'number' ? value : Number.NaN;
}

/** A word among the figures; '?' when it is missing. */
export function textOf(figures: Figures, name: string): string {
  return String(figures[name] ?? '?');
}
