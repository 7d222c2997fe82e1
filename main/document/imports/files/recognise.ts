import type { WindowImportChoices } from '../../../../shared-types/import-choices.ts';
import { type Bill, readBill } from '../bill/read-bill.ts';
import type { Drawing, DrawingFailure, DrawingResult } from '../drawing/types.ts';
import { looksLikeBinaryDxf, looksLikeDxf, readDxf } from '../dxf/read-dxf.ts';
import { looksLikeDesign, readDesign } from '../exchange/read-design.ts';
import type { Design, DesignFailure } from '../exchange/types.ts';
import { readGerber } from '../gerber/read-gerber.ts';
import type { GerberFailure, GerberImage } from '../gerber/types.ts';
import { type Netlist, readNetlist } from '../netlist/read-netlist.ts';
import { readPlacements } from '../placements/read-placements.ts';
import type { PlacementTable } from '../placements/types.ts';
import { looksLikeSvg, readSvg } from '../svg/read-svg.ts';
import { decodeText, type TextResult } from '../text/decode-text.ts';

export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type LayerRole =
  | 'profile'
  | 'mechanical'
  | 'copper-top'
  | 'copper-bottom'
  | 'copper-inner'
  | 'paste-top'
  | 'paste-bottom'
  | 'mask-top'
  | 'mask-bottom'
  | 'legend'
  | 'other-layer';

/** What a file turned out to be, and how that was told. */
export type Recognised =
  | { readonly kind: 'placements'; readonly name: string; readonly table: PlacementTable }
  | {
      readonly kind: 'layer';
      readonly name: string;
      readonly role: LayerRole;
      readonly by: 'function' | 'name';
      readonly image: GerberImage;
    }
  | { readonly kind: 'unusedLayer'; readonly name: string; readonly role: LayerRole }
  | { readonly kind: 'brokenLayer'; readonly name: string; readonly failure: GerberFailure }
  | { readonly kind: 'design'; readonly name: string; readonly design: Design }
  | { readonly kind: 'brokenDesign'; readonly name: string; readonly failure: DesignFailure }
  | { readonly kind: 'drawing'; readonly name: string; readonly drawing: Drawing }
  | { readonly kind: 'brokenDrawing'; readonly name: string; readonly failure: DrawingFailure }
  | { readonly kind: 'netlist'; readonly name: string; readonly netlist: Netlist }
  | { readonly kind: 'bill'; readonly name: string; readonly bill: Bill }
  | { readonly kind: 'noText'; readonly name: string; readonly reason: Extract<TextResult, { ok: false }>['reason'] }
  | { readonly kind: 'other'; readonly name: string; readonly what: OtherKind };

export type OtherKind = 'drill' | 'netlist' | 'xml' | 'json' | 'bill' | 'text';

/** Tells what one file is by its content, and a Gerber layer's role by its own function or else its name. Never throws. */
export function recognise({ name, bytes }: GivenFile, choices: WindowImportChoices = {}): Recognised {
  if (looksLikeDesign(bytes)) {
    const read = readDesign(bytes);
    if (read.ok) return { kind: 'design', name, design: read.design };
    return { kind: 'brokenDesign', name, failure: read.failure };
  }
  if (looksLikeSvg(bytes)) return drawingOf(name, readSvg(bytes));
  if (looksLikeBinaryDxf(bytes)) return { kind: 'brokenDrawing', name, failure: { reason: 'binary', line: 1 } };
  const decoded = decodeText(bytes);
  if (!decoded.ok) return { kind: 'noText', name, reason: decoded.reason };
  const { text } = decoded;
  const head = text.slice(0, 20_000);
  if (looksLikeDxf(head)) return drawingOf(name, readDxf(text));
  const other = otherKind(head);
  const netlist = other === 'netlist' ? readNetlist(text) : null;
  if (netlist) return { kind: 'netlist', name, netlist };
  if (other) return { kind: 'other', name, what: other };
  if (looksLikeGerber(head)) {
    const early = roleByFunction(statedFunction(head));
    if (early && UNUSED_ROLES.has(early)) return { kind: 'unusedLayer', name, role: early };
    const result = readGerber(text);
    if (!result.ok) return { kind: 'brokenLayer', name, failure: result.failure };
    const byFunction = roleByFunction(result.image.fileFunction);
    return {
      kind: 'layer',
      name,
      role: byFunction ?? roleByName(name),
      by: byFunction ? 'function' : 'name',
      image: result.image,
    };
  }
  const table = readPlacements(text, name, decoded.encoding, decoded.guessed, choices);
  if (table?.headingLine != null) return { kind: 'placements', name, table };
  const bill = readBill(text, name);
  if (bill) return { kind: 'bill', name, bill };
  if (table) return { kind: 'placements', name, table };
  return { kind: 'other', name, what: looksLikeBill(head) ? 'bill' : 'text' };
}

function drawingOf(name: string, read: DrawingResult): Recognised {
  if (read.ok) return { kind: 'drawing', name, drawing: read.drawing };
  return { kind: 'brokenDrawing', name, failure: read.failure };
}

function looksLikeGerber(head: string): boolean {
  return /%FS[LTAID]|%MO(MM|IN)\*%|%ADD\d+|^G04 /m.test(head) && head.includes('*');
}

function otherKind(head: string): OtherKind | null {
  if (/^\s*(%\s*)?M48\s*$/m.test(head.slice(0, 400))) return 'drill';
  if (/^(P {2}(JOB|CODE|UNITS)|3[12]7.{20,}X[ +-]*\d+Y[ +-]*\d)/m.test(head.slice(0, 4000))) return 'netlist';
  if (/^\s*(<\?xml|<[A-Za-z!][^>]*>)/.test(head)) return 'xml';
  return /^\s*[{[]\s*("|\{|\])/.test(head) ? 'json' : null;
}

function looksLikeBill(head: string): boolean {
  return head
    .split('\n')
    .some((line) => /\b(qty|quantity)\b/i.test(line) && /\b(ref|reference|designator)s?\b/i.test(line));
}

/** Layers that a board does not need are not read, once they say what they are. */
const UNUSED_ROLES = new Set<LayerRole>(['copper-inner', 'legend', 'other-layer']);

function statedFunction(head: string): string[] {
  return /TF\.FileFunction,([^*]*)\*/.exec(head)?.[1].split(',') ?? [];
}

/** Gerber format specification, section 5.6.3 (.FileFunction). */
function roleByFunction([kind, second, third]: readonly string[]): LayerRole | null {
  const where = /^top$/i.test(third ?? '') || /^top$/i.test(second ?? '') ? 'top' : 'bottom';
  switch (kind?.toLowerCase()) {
    case 'profile':
      return 'profile';
    case 'copper':
      return /^(top|bot)$/i.test(third ?? '') ? `copper-${where}` : 'copper-inner';
    case 'paste':
      return `paste-${where}`;
    case 'soldermask':
      return `mask-${where}`;
    case 'legend':
      return 'legend';
    case undefined:
      return null;
    default:
      return 'other-layer';
  }
}

/** File name endings in use for layers. Common practice, no source. */
const NAME_RULES: readonly [RegExp, LayerRole][] = [
  [/\.(gko|gml|oln)$|edge[._-]?cuts|outline|profile|board[._ -]?shape|dimension/i, 'profile'],
  [/\.gm\d+$|mechanical|\.gd\d+$/i, 'mechanical'],
  [/\.(gtl|cmp)$|top[._ -]?(layer|copper)|f[._]cu\b/i, 'copper-top'],
  [/\.(gbl|sol)$|bot(tom)?[._ -]?(layer|copper)|b[._]cu\b/i, 'copper-bottom'],
  [/\.(gtp|crc)$|top[._ -]?paste|f[._]paste/i, 'paste-top'],
  [/\.(gbp|crs)$|bot(tom)?[._ -]?paste|b[._]paste/i, 'paste-bottom'],
  [/\.(gts|stc)$|top[._ -]?(solder)?mask|f[._]mask/i, 'mask-top'],
  [/\.(gbs|sts)$|bot(tom)?[._ -]?(solder)?mask|b[._]mask/i, 'mask-bottom'],
  [/\.(gto|gbo|plc|pls)$|silk|legend/i, 'legend'],
  [/\.(g\d+|gp\d+)$|\binner?\d*|\bin\d+[._]cu/i, 'copper-inner'],
];

function roleByName(name: string): LayerRole {
  return NAME_RULES.find(([pattern]) => pattern.test(name))?.[1] ?? 'mechanical';
}
