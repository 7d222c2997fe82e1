import type { LengthWord, Meaning } from '../../../../shared-types/import-choices.ts';

export type { LengthWord, Meaning };

/** Headings met in exports, letters and digits only, lower case. Common practice, no source. */
const HEADINGS: Readonly<Record<Meaning, string>> = {
  refdes:
    'ref refdes refdesignator reference referencedesignator designator designation partreference partdesignator componentdesignator compref bezeichner bauteil bauteilname referenz repere',
  x: 'x posx xpos positionx xposition midx xmid centerx centrex xcenter xcentre symx symbolx locationx xlocation locx xloc coordx xcoord xcoordinate placementx xcoor cx originx xkoord xkoordinate koordx',
  y: 'y posy ypos positiony yposition midy ymid centery centrey ycenter ycentre symy symboly locationy ylocation locy yloc coordy ycoord ycoordinate placementy ycoor cy originy ykoord ykoordinate koordy',
  referenceX: 'refx',
  referenceY: 'refy',
  padX: 'padx',
  padY: 'pady',
  rotation:
    'rot rotation rotate rotationdeg angle orientation orient theta symrotate symrotation turn deg drehung drehwinkel winkel',
  side: 'side layer tb topbottom topbot boardside mountside placementside componentside smdside lay seite bestuckseite face',
  mirror: 'mirror symmirror mirrored flip flipped solderside bottomside onbottom isbottom backside',
  embedded: 'embeddedlayer embedded',
  package:
    'package footprint pattern comppackage symbolname patternname packagename footprintname pcbfootprint housing case land landpattern pkg decal shape partdecal packagetype gehause bauform boitier',
  value: 'value val comment compvalue partvalue partnumber mpn parttype type componentvalue device wert valeur',
  description: 'description desc compdevicetype devicetype comptol tolerance manufacturer vendor',
  height: 'height compheight heightmax',
  unit: 'unit units',
  fitted: 'fitted dnp populate populated mount mounted assembly dnf',
  plain:
    'no nr number item id uuid technology smd tht pins pincount pinscount padcount glue netlist group variant quantity qty lib library sheet',
};

/** Headings that name the part only where no clearer one stands. */
const WEAK_REFDES = ['name', 'part', 'component', 'componentname', 'partname', 'comp'];

const MEANINGS = new Map<string, Meaning>(
  (Object.entries(HEADINGS) as [Meaning, string][]).flatMap(([meaning, words]) =>
    words.split(' ').map((word): [string, Meaning] => [word, meaning]),
  ),
);

const UNIT_WORDS: Readonly<Record<string, LengthWord>> = {
  mm: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  metric: 'mm',
  mil: 'mil',
  mils: 'mil',
  thou: 'mil',
  in: 'inch',
  inch: 'inch',
  inches: 'inch',
  imperial: 'mil',
  um: 'um',
  µm: 'um',
  μm: 'um',
  micron: 'um',
  microns: 'um',
  cm: 'cm',
};

export function unitWord(word: string): LengthWord | null {
  return UNIT_WORDS[word.trim().toLowerCase()] ?? null;
}

/** `Center-X(mm)` to its bare name and unit. */
export function bareHeading(heading: string): { name: string; unit: LengthWord | null } {
  const bracket = /^(.*?)[\s_]*[([<{]\s*([^\])>}]*)\s*[\])>}]\s*$/.exec(heading);
  const suffix = /^(.*)[\s_-](mm|mils?|inch|inches|um|µm)$/i.exec(heading);
  const [stem, unit] = bracket
    ? [bracket[1], unitWord(bracket[2])]
    : suffix
      ? [suffix[1], unitWord(suffix[2])]
      : [heading, null];
  // Accents go: Gehäuse, boîtier.
  return {
    name: stem
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]/g, ''),
    unit,
  };
}

export function meaningOf(name: string): Meaning | null {
  return MEANINGS.get(name) ?? null;
}

export interface Column {
  readonly heading: string;
  readonly meaning: Meaning | null;
  readonly unit: LengthWord | null;
}

/**
 * Meanings of a row of headings. 'Name', 'Part' and 'Component' name the part only if nothing clearer does, and its value otherwise;
 * 'Ref X' stands for x where no middle column is there. A heading met twice keeps its meaning at the first.
 */
export function readHeadings(headings: readonly string[]): Column[] {
  const columns = headings.map((heading) => {
    const { name, unit } = bareHeading(heading);
    return { heading: heading.trim(), name, unit, meaning: meaningOf(name) };
  });
  const has = (meaning: Meaning) => columns.some((column) => column.meaning === meaning);
  const strong = has('refdes');
  const weak = strong ? undefined : columns.find(({ name }) => WEAK_REFDES.includes(name));
  const hasValue = has('value');
  const spareX = !has('x') && has('referenceX');
  const taken = new Set<Meaning>();
  return columns.map((column) => {
    let { meaning } = column;
    if (column === weak) meaning = 'refdes';
    else if (WEAK_REFDES.includes(column.name)) meaning = hasValue ? 'description' : 'value';
    if (spareX && meaning === 'referenceX') meaning = 'x';
    if (spareX && meaning === 'referenceY') meaning = 'y';
    if (meaning !== null && meaning !== 'plain') {
      if (taken.has(meaning)) meaning = 'plain';
      else taken.add(meaning);
    }
    return { heading: column.heading, meaning, unit: column.unit };
  });
}

/** How well a row would do as the heading: known meanings, or 0 when reference or position are missing. */
export function headingScore(columns: readonly Column[]): number {
  const known = new Set(columns.map(({ meaning }) => meaning));
  if (!known.has('refdes') || !known.has('x') || !known.has('y')) return 0;
  return columns.filter(({ meaning }) => meaning !== null && meaning !== 'plain').length;
}
