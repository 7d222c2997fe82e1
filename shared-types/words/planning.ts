import type { ActionKind, PartAction } from '../evaluation.ts';
import { type Figures, numberOf, textOf } from './figures.ts';
import { saidForEmitter } from './finding-sentences/emitter.ts';
import { METRIC, type Measures, rounded } from './measures.ts';

/** Names of the actions, as the table and the sheet print them. */
export const ACTION_NAMES: Record<ActionKind, string> = {
  leave: 'Leave',
  'leave-will-reflow': 'Leave, will reflow',
  shield: 'Shield',
  secure: 'Secure',
  'remove-first': 'Remove first',
  'cannot-be-saved': 'Cannot be saved',
  target: 'Target',
};

const JUDGED: Record<string, string> = { body: 'body', skin: 'skin', joint: 'joints' };
const judged = (figures: Figures): string => JUDGED[textOf(figures, 'judgedOn')] ?? 'body';

const lowerFirst = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/** Where a limit comes from, in a word or two; the full source stands in `actionLimit`. */
function limitOrigin(figures: Figures): string {
  const origin = textOf(figures, 'limitOrigin');
  const words: Record<string, string> = {
    own: 'data sheet',
    tc: 'Tc',
    alloy: 'solidus',
    shop: 'shop preset',
    unknown: 'class not known',
  };
  return words[origin] ?? lowerFirst(textOf(figures, 'className'));
}

/** 'skin 243 °C, limit 225 (connector, PBT)'. */
function peakAndLimit(figures: Figures, m: Measures): string {
  const [peakC, limitC] = [numberOf(figures, 'peakC'), numberOf(figures, 'limitC')];
  const same = m.degrees(peakC) === m.degrees(limitC) && peakC > limitC ? 'just over its ' : '';
  return `${judged(figures)} ${m.temperature(peakC)}, ${same}limit ${m.degrees(limitC)} (${limitOrigin(figures)})`;
}

const under = (figures: Figures, m: Measures): string => m.difference(numberOf(figures, 'marginK'));
/** 'solidus 217'; a solidus taken because the alloy is not known says so: testing a joint may settle the matter. */
const solidus = (figures: Figures, m: Measures): string =>
  `solidus ${m.degrees(numberOf(figures, 'solidusC'))}${figures.alloyKnown === 0 ? ', alloy not known' : ''}`;
const jointPeak = (figures: Figures, m: Measures): string => m.temperature(numberOf(figures, 'jointMaxC'));
/** '231 under aluminium foil, tented with a 1.5 mm gap'. */
const shieldedTo = (figures: Figures, m: Measures): string =>
  `${m.degrees(numberOf(figures, 'shieldedC'))} under ${lowerFirst(textOf(figures, 'shieldName'))}`;

/** What would bring an unsavable part under its limit, from where its heat comes. */
const HELPS: Record<string, string> = {
  gas: 'a smaller nozzle, less flow or the jet turned away from it would help',
  preheater: 'less preheat on its side would help',
  joints: 'its heat comes through the board: a shorter time in the gas would help',
};
const helps = (figures: Figures): string => HELPS[textOf(figures, 'mostlyFrom')] ?? HELPS.joints;

/** What keeps a part that comes near to melting from it. */
const NEAR_HELPS: Record<string, string> = {
  gas: 'keep the gas away from it',
  preheater: 'less preheat would help',
  joints: 'its heat comes through the board',
};

const massWords = (figures: Figures): string => {
  const grams = numberOf(figures, 'massG');
  const mass = grams < 0.1 ? `${rounded(grams * 1000)} mg` : `${rounded(grams, 1)} g`;
  const area = numberOf(figures, 'padAreaMm2');
  const guessed = [
    textOf(figures, 'massFrom') === 'estimated' ? 'mass' : '',
    textOf(figures, 'padFrom') === 'estimated' ? 'pad area' : '',
  ].filter(Boolean);
  const basis = guessed.length ? ` (${guessed.join(' and ')} estimated)` : '';
  return `${mass} on ${rounded(area, 1)} mm² of pads${basis}, ${rounded(numberOf(figures, 'gramsPerSquareInch'))} g per square inch`;
};

const lightness = (figures: Figures): string => {
  const grams = numberOf(figures, 'gramsPerSquareInch');
  return grams < 1 ? 'less than 1' : rounded(grams);
};

type ReasonSentence = (figures: Figures, m: Measures) => string;

const REASONS = {
  'within-limits': (f, m) => `${peakAndLimit(f, m)}: ${under(f, m)} under it`,
  'no-limit-known': (f, m) =>
    `body ${m.temperature(numberOf(f, 'peakC'))}, no limit known: enter the one of its data sheet`,
  'warm-joints-stay-solid': (f, m) => `${peakAndLimit(f, m)}: warm, but its joints stay solid (${solidus(f, m)})`,
  'large-part-near-melting': (f, m) =>
    `joints ${jointPeak(f, m)}, ${m.difference(numberOf(f, 'belowSolidusK'))} below melting (${solidus(f, m)}): put a thermocouple on it; ${NEAR_HELPS[textOf(f, 'mostlyFrom')] ?? NEAR_HELPS.joints}`,
  'joints-may-melt': (f, m) =>
    `joints ${jointPeak(f, m)}, ${m.difference(numberOf(f, 'belowSolidusK'))} below melting (${solidus(f, m)}), band ±${m.difference(numberOf(f, 'bandK'))}: they may melt; low air, do not touch it, inspect it afterwards, or put a thermocouple on it`,
  'margin-within-band': (f, m) =>
    `${peakAndLimit(f, m)}: ${under(f, m)} under it, band ±${m.difference(numberOf(f, 'bandK'))}: put a thermocouple on it`,
  'measure-the-outlet': (f, m) =>
    `${peakAndLimit(f, m)}: ${under(f, m)} under it, band ±${m.difference(numberOf(f, 'bandK'))}: measure the outlet, the band then shrinks to ±${m.difference(numberOf(f, 'measuredK'))}`,
  'small-part-reflows': (f, m) =>
    `its joints reach ${jointPeak(f, m)} and melt (${solidus(f, m)}): low air, do not touch it, inspect it afterwards`,
  'underside-part-reflows': (f, m) =>
    `underside, its joints reach ${jointPeak(f, m)} and melt (${solidus(f, m)}): light enough to stay (${lightness(f)} g per square inch of pads, under 30), do not knock the board, inspect it afterwards`,
  'small-part-melts-at-one-end': (f, m) =>
    `one side melts (${jointPeak(f, m)}), the other stays solid (${m.degrees(numberOf(f, 'jointMinC'))}, ${solidus(f, m)}): low air, do not touch it, inspect it afterwards`,
  'large-part-reflows': (f, m) =>
    `all its joints melt (coldest ${m.temperature(numberOf(f, 'jointMinC'))}, ${solidus(f, m)}): do not move the board, inspect every joint afterwards`,
  'shield-brings-it-under': (f, m) => `${peakAndLimit(f, m)}: ${shieldedTo(f, m)}`,
  'shield-keeps-joints-solid': (f, m) => `joints ${jointPeak(f, m)}, ${solidus(f, m)}: ${shieldedTo(f, m)}`,
  'shield-for-certainty': (f, m) =>
    `${peakAndLimit(f, m)}: within the band of ±${m.difference(numberOf(f, 'bandK'))}; ${shieldedTo(f, m)}`,
  'shielded-as-planned': (f, m) => `shielded: ${peakAndLimit(f, m)}, ${under(f, m)} under it`,
  'shielded-no-limit-known': (f, m) => `shielded: body ${m.temperature(numberOf(f, 'peakC'))}, no limit known`,
  'shielded-will-reflow': (f, m) =>
    `shielded, yet its joints reach ${jointPeak(f, m)} and melt (${solidus(f, m)}): do not touch it, inspect it afterwards`,
  'heavy-when-molten': (f, m) =>
    `underside, joints ${jointPeak(f, m)} (${solidus(f, m)}): ${massWords(f)}, more than 30: it can drop, hold it from below`,
  'always-off': (f) => `${lowerFirst(textOf(f, 'className'))}: off before any heat, whatever the distance`,
  'board-too-hot': (f, m) =>
    `${peakAndLimit(f, m)}: the board under it reaches ${jointPeak(f, m)}, a shield cannot help`,
  'heat-through-joints': (f, m) =>
    `${peakAndLimit(f, m)}: most of its heat comes through the board, still ${shieldedTo(f, m)}`,
  'shield-not-enough': (f, m) => `${peakAndLimit(f, m)}: still ${shieldedTo(f, m)}`,
  'shield-did-not-hold': (f, m) => `${peakAndLimit(f, m)}: over by ${under(f, m)} under its shield`,
  'rated-for-one-reflow': (f, m) =>
    `${lowerFirst(textOf(f, 'className'))}, rated for one reflow: its joints would melt again (${jointPeak(f, m)}, ${solidus(f, m)}); fit a new one afterwards`,
  'not-reflow-rated': (f, m) =>
    `${lowerFirst(textOf(f, 'className'))}, not rated for reflow: its joints would melt (${jointPeak(f, m)}, ${solidus(f, m)})`,
  'class-not-known-would-reflow': (f, m) =>
    `class not known, so judged as not rated for reflow: its joints would melt (${jointPeak(f, m)}, ${solidus(f, m)}); say what it is`,
  'large-part-partly-molten': (f, m) =>
    `joints ${jointPeak(f, m)} at one edge, ${m.degrees(numberOf(f, 'jointMinC'))} at the other (${solidus(f, m)}): they do not all melt, it would tilt or tear`,
  'tagged-by-you': () => 'tagged to come off',
  'underfill-softens': (f, m) =>
    `underfilled, joints ${jointPeak(f, m)}, ${m.difference(numberOf(f, 'belowSolidusK'))} ${numberOf(f, 'belowSolidusK') >= 0 ? 'below' : 'above'} solidus ${m.degrees(numberOf(f, 'solidusC'))}: the filler softens first and squeezes solder out; ${helps(f)}, else decline or quote its replacement`,
  'underfilled-over-limit': (f, m) =>
    `${peakAndLimit(f, m)}, and it is underfilled, so it cannot come off and go back: ${helps(f)}, else decline or quote its replacement`,
  'target-of-site': (f) => `to be exchanged at ${textOf(f, 'siteName')}`,
} satisfies Record<string, ReasonSentence>;

export type ReasonCode = keyof typeof REASONS;

/** Why a part gets its action, in plain words with figures: 'skin 243 °C, limit 225 (PBT melts): ...'. */
export function actionReason(action: PartAction, measures: Measures = METRIC): string {
  const sentence: ReasonSentence | undefined = (REASONS as Record<string, ReasonSentence>)[action.reason];
  if (!sentence) throw new Error(`No words for the reason ${action.reason}.`);
  const said = sentence(action.figures, measures);
  return action.figures.emitter === 1 ? saidForEmitter(said) : said;
}

/** The limit an action was judged by, with its source: 'limit 200 °C: PBT, glass-filled, ...'. Null: none was needed. */
export function actionLimit(action: PartAction, measures: Measures = METRIC): string | null {
  if (action.figures.limitC === undefined) return null;
  return `limit ${measures.temperature(numberOf(action.figures, 'limitC'))}: ${textOf(action.figures, 'limitSource')}`;
}

/** First words of the note on a watch point that stands for 'secure this part'. */
export const SECURE_NOTE = 'Secure from below before heat';

/** Note of the watch point that taking a 'secure' suggestion adds. */
export const secureNote = (action: { figures: Figures }): string => `${SECURE_NOTE}: ${massWords(action.figures)}.`;

/** Note of the removal of a part that may not be soldered again. */
export const NEW_PART_NOTE = 'Fit a new one: rated for one reflow.';

type SummaryCounts = {
  cannot: number;
  remove: number;
  secure: number;
  shield: number;
  willReflow: number;
  leave: number;
};

/** '3 remove · 4 shield · 14 will reflow · 62 leave'; exceptions first, what is not there is left out. */
export function summaryWords(counts: SummaryCounts): string {
  const said: [number, string][] = [
    [counts.cannot, 'cannot be saved'],
    [counts.remove, 'remove'],
    [counts.secure, 'secure'],
    [counts.shield, 'shield'],
    [counts.willReflow, 'will reflow'],
    [counts.leave, 'leave'],
  ];
  const present = said.filter(([count]) => count > 0);
  if (present.length === 0) return 'No part evaluated';
  return present.map(([count, words]) => `${count} ${words}`).join(' · ');
}

const TAKE_WORDS: Record<'remove' | 'shield' | 'secure', string> = {
  remove: 'Remove',
  shield: 'Shield',
  secure: 'Secure',
};

/** Verb on the button that takes suggestions: 'Shield U7', 'Remove 3 parts, shield 4'. */
export function takeWords(suggestions: readonly { kind: 'remove' | 'shield' | 'secure'; refdes: string }[]): string {
  if (suggestions.length === 1) return `${TAKE_WORDS[suggestions[0].kind]} ${suggestions[0].refdes}`;
  const groups = (['remove', 'shield', 'secure'] as const).flatMap((kind) => {
    const count = suggestions.filter((suggestion) => suggestion.kind === kind).length;
    return count ? [{ verb: TAKE_WORDS[kind], count }] : [];
  });
  return groups
    .map(({ verb, count }, index) =>
      index === 0 ? `${verb} ${count} ${count === 1 ? 'part' : 'parts'}` : `${verb.toLowerCase()} ${count}`,
    )
    .join(', ');
}
