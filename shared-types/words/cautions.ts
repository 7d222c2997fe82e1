/**
 * Cautions for the work map and for Steps. They are the usual ones of the trade, short, and they defer to the data
 * sheets, the shop's procedures and local rules. `always`: printed on every sheet; the others where planning names them.
 * Sources behind them (not quoted): extraction at the joint and eye protection, UK HSE INDG248 and EN 166 (from memory);
 * handling of sensitive parts, ANSI/ESD S20.20-2021; lead, 29 CFR 1910.1025 (from memory); baking before rework where
 * bodies pass 200 C, J-STD-033 (from memory); the rest is common practice, no source.
 */
export const CAUTION_IDS = [
  'estimate',
  'power-off',
  'burns',
  'fumes',
  'eyes',
  'static',
  'extraction-off',
  'lead',
  'unknown-alloy',
  'cells',
  'electrolytics',
  'coated',
  'plastics',
  'underfill',
  'underside-parts',
  'moisture',
  'covers',
  'invented',
] as const;
export type CautionId = (typeof CAUTION_IDS)[number];

export type Caution = {
  title: string;
  sentence: string;
  /** Printed on every sheet, whatever the board. */
  always: boolean;
};

const always = (title: string, sentence: string): Caution => ({ title, sentence, always: true });
const where = (title: string, sentence: string): Caution => ({ title, sentence, always: false });

export const CAUTIONS: Record<CautionId, Caution> = {
  estimate: always(
    'Estimate',
    "All temperatures here are estimates from a model of this board, not measurements. Data sheets, the shop's procedures, local rules and trained practice come first.",
  ),
  'power-off': always(
    'Power off',
    'Disconnect supplies, cables and cells; let capacitors discharge and measure that they did before touching the board.',
  ),
  burns: always(
    'Burns',
    'Nozzle, outlet gas, preheater, board, clamp and shields burn, and stay hot long after the gas is off. Know where the hot parts are before reaching in.',
  ),
  fumes: always(
    'Fumes',
    'Flux and hot plastics give off fumes that irritate and sensitise. Extract at the board; stop when you smell or see smoke.',
  ),
  eyes: always('Eyes', 'Wear eye protection: cells, electrolytics and wet laminate can burst when heated.'),
  static: always('Static', 'Earthed wrist strap, mat and tools; keep insulators such as plastic tape and cups away.'),
  'extraction-off': where(
    'Extraction is off',
    "The station's fume extraction is set to off in this plan. Switch it on before heating, and evaluate again: the draught cools the board.",
  ),
  lead: where(
    'Lead',
    'Joints on this board hold or may hold lead. Gloves or washed hands, no food or drink at the bench, waste kept apart.',
  ),
  'unknown-alloy': where(
    'Unknown alloy',
    'The alloy of some joints is not known: the target is judged at the highest candidate, neighbours at the lowest. Treat them as leaded until tested.',
  ),
  cells: where(
    'Cells',
    'Cells and batteries come off before any heat, whatever the distance. Insulate the contacts, never short or reheat a cell, keep it away from the bench while hot work goes on.',
  ),
  electrolytics: where(
    'Electrolytics',
    'Electrolytics near the site can vent or burst. Keep the face away, and put back none that bulged, leaked or went over its limit.',
  ),
  coated: where(
    'Coating',
    'Remove the coating from the site and from joints that will melt before heat. Some coatings give off toxic vapour when hot (polyurethane: isocyanates): find out which it is, extract, and follow its data sheet.',
  ),
  plastics: where(
    'Plastics',
    'Connector, switch and optic plastics soften before they look damaged. Check fit and latch after cooling.',
  ),
  underfill: where(
    'Underfill',
    'A part held by underfill or edge bond does not lift when its solder melts. Do not pry; soften and free the bond first as its data sheet says.',
  ),
  'underside-parts': where(
    'Underside parts',
    'Heavy parts under the site may drop when their joints melt. Secure them, and do not knock or turn the board while it is hot.',
  ),
  moisture: where(
    'Moisture',
    'Bodies get hotter in this plan than J-STD-033 leaves without a question. Bake the board and moisture-sensitive parts first where J-STD-033 or the data sheet asks for it.',
  ),
  covers: where(
    'Cans and frames',
    'Metal cans and frames store heat and reach the fingers hot. Lift them with a tool.',
  ),
  invented: where(
    'Invented board',
    'Demonstration data: this board was invented for trying out the program and exists nowhere.',
  ),
};

/**
 * The cautions to print: those that always stand, then the named ones, each once, in the order of the table.
 * An id without words is still printed, at the end, so that no caution is lost in silence.
 */
export function cautionsFor(ids: readonly string[]): Caution[] {
  const known = CAUTION_IDS.filter((id) => CAUTIONS[id].always || ids.includes(id)).map((id) => CAUTIONS[id]);
  const unknown = [...new Set(ids)].filter((id) => !(CAUTION_IDS as readonly string[]).includes(id));
  return [
    ...known,
    ...unknown.map((id) => where(id, 'This program has no words for this caution: ask before you go on.')),
  ];
}
