import { type At, middleOf, type Rect, rectOf, type Side, type TruePad } from './truth.ts';

/** Pads by reference out of texts that list them, by plain patterns. */
export type PadList = Map<string, TruePad[]>;

function add(list: PadList, refdes: string, pad: TruePad): void {
  const known = list.get(refdes);
  if (known) known.push(pad);
  else list.set(refdes, [pad]);
}

const boxAbout = ({ x, y }: At, width = 0, height = 0): Rect => ({
  minX: x - width / 2,
  minY: y - height / 2,
  maxX: x + width / 2,
  maxY: y + height / 2,
});

/** IPC-D-356: reference in columns 21 to 26, pin in 28 to 31, access, place and size behind. */
export function netlistTruth(text: string): PadList {
  const list: PadList = new Map();
  const scale = /^P\s+UNITS\s+(CUST 1|SI)/m.test(text) ? 0.001 : 0.00254;
  const records = text.matchAll(/^3([12])7.{17}(.{6}).(.{4}).*?A(\d\d)X([+-]\d+)Y([+-]\d+)X(\d+)Y(\d+)R(\d+)/gm);
  for (const [, through, name, pin, access, x, y, width, height, turn] of records) {
    const refdes = name.trim();
    if (refdes === '' || refdes === 'VIA') continue;
    const at = { x: Number(x) * scale, y: Number(y) * scale };
    const upright = Number(turn) % 180 === 90;
    const [w, h] = [Number(width) * scale, (Number(height) || Number(width)) * scale];
    const box = boxAbout(at, upright ? h : w, upright ? w : h);
    const sides: Side[] = through === '1' ? ['top', 'bottom'] : [access === '01' ? 'top' : 'bottom'];
    for (const side of sides) add(list, refdes, { pin: pin.trim(), side, at, box });
  }
  return list;
}

const MM: Readonly<Record<string, number>> = { MILLIMETER: 1, MICRON: 0.001, INCH: 25.4 };

/** IPC-2581: pads of the two outer copper layers with the pins that they name; their sizes stay aside. */
export function designTruth(text: string): { pads: PadList; bodies: Map<string, At[]>; profile: Rect | null } {
  const list: PadList = new Map();
  const mm = MM[/<CadHeader[^>]*\bunits="(\w+)"/.exec(text)?.[1] ?? ''] ?? 1;
  const sides = new Map<string, Side>();
  for (const [tag] of text.matchAll(/<Layer\b[^>]*>/g)) {
    const [name, side, kind] = ['name', 'side', 'layerFunction'].map(
      (key) => new RegExp(`\\b${key}="([^"]*)"`).exec(tag)?.[1] ?? '',
    );
    if (/^(TOP|BOTTOM)$/.test(side) && /^(CONDUCTOR|PLANE|SIGNAL|MIXED)$/.test(kind)) {
      sides.set(name, side === 'TOP' ? 'top' : 'bottom');
    }
  }
  for (const [, layer, body] of text.matchAll(
    /<LayerFeature\b[^>]*\blayerRef="([^"]*)"[^>]*>([\s\S]*?)<\/LayerFeature>/g,
  )) {
    const side = sides.get(layer);
    if (!side) continue;
    for (const [pad] of body.matchAll(/<Pad\b[\s\S]*?<\/Pad>/g)) {
      const [, x, y] = /<Location x="([-+.\deE]+)" y="([-+.\deE]+)"/.exec(pad) ?? [];
      const pinRef = /<PinRef\b[^>]*>/.exec(pad)?.[0] ?? '';
      const refdes = /componentRef="([^"]*)"/.exec(pinRef)?.[1];
      const pin = /\bpin="([^"]*)"/.exec(pinRef)?.[1];
      if (!refdes || !pin || y === undefined) continue;
      const at = { x: Number(x) * mm, y: Number(y) * mm };
      add(list, refdes, { pin, side, at, box: boxAbout(at) });
    }
  }
  const profile = /<Profile>([\s\S]*?)(<Cutout>|<\/Profile>)/.exec(text)?.[1] ?? '';
  const values = (axis: string): number[] =>
    [...profile.matchAll(new RegExp(`\\s${axis}="([-+.\\deE]+)"`, 'g'))].map(([, value]) => Number(value) * mm);
  const [xs, ys] = [values('x'), values('y')];
  const box = { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
  return { pads: list, bodies: bodiesOf(text, mm), profile: xs.length > 0 ? box : null };
}

const attribute = (tag: string, key: string): string => new RegExp(`\\b${key}="([^"]*)"`).exec(tag)?.[1] ?? '';

/** Middles of the outlines that a package draws, where its components put them: turned, then mirrored, then moved. */
function bodiesOf(text: string, mm: number): Map<string, At[]> {
  const middles = new Map<string, At[]>();
  for (const [whole, head] of text.matchAll(/(<Package\b[^>]*>)[\s\S]*?<\/Package>/g)) {
    const outlines = [...whole.matchAll(/<Outline>([\s\S]*?)<\/Outline>/g)].map(([, body]) => {
      const points = [...body.matchAll(/\bx="([-+.\deE]+)" y="([-+.\deE]+)"/g)];
      return middleOf(rectOf(points.map(([, x, y]) => ({ x: Number(x) * mm, y: Number(y) * mm }))));
    });
    middles.set(attribute(head, 'name'), outlines);
  }
  const bodies = new Map<string, At[]>();
  for (const [whole, head] of text.matchAll(/(<Component\b[^>]*>)[\s\S]*?<\/Component>/g)) {
    const turn = (Number(attribute(whole, 'rotation')) * Math.PI) / 180;
    const mirrored = attribute(whole, 'mirror') === 'true';
    const [, x, y] = /<Location x="([-+.\deE]+)" y="([-+.\deE]+)"/.exec(whole) ?? [];
    const own = middles.get(attribute(head, 'packageRef')) ?? [];
    const placed = own.map((middle): At => {
      const across = middle.x * Math.cos(turn) - middle.y * Math.sin(turn);
      const up = middle.x * Math.sin(turn) + middle.y * Math.cos(turn);
      return { x: Number(x) * mm + (mirrored ? -across : across), y: Number(y) * mm + up };
    });
    bodies.set(attribute(head, 'refDes'), placed);
  }
  return bodies;
}
