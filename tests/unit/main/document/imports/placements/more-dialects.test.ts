import { describe, expect, it } from 'vitest';
import { type ImportChoices, importBoard } from '../../../../../../main/document/imports/import-board.ts';

/** Invented parts: reference, package, x, y (mm), rotation, side. */
const PARTS = [
  ['R1', '0402', 12.5, 20.25, 90, 'top'],
  ['R2', '0402', 30, 20.25, -90, 'top'],
  ['U1', 'SOIC-8', 45.125, 33, -270, 'top'],
  ['R3', '0402', 22, 44, 270, 'top'],
  ['C1', '0603', 60, 10, 180, 'bottom'],
  ['C2', '0603', 70, 40, -45, 'bottom'],
  ['C3', '0603', 66, 30, 0, 'bottom'],
] as const;
type Row = (typeof PARTS)[number];
const bytesOf = (text: string) => new TextEncoder().encode(text);

/** UTF-16, little-endian, with its mark. */
function utf16(text: string): Uint8Array {
  const bytes = new Uint8Array(2 + text.length * 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let index = 0; index < text.length; index++) view.setUint16(2 + 2 * index, text.charCodeAt(index), true);
  return bytes;
}

function read(name: string, bytes: Uint8Array, choices: ImportChoices = {}) {
  const result = importBoard([{ name, bytes }], choices);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const { parts } = result.value.board;
  const origin = parts.find(({ refdes }) => refdes === 'R1') ?? { x: 0, y: 0 };
  const found = PARTS.map(([refdes]) => {
    const part = parts.find((one) => one.refdes === refdes);
    return (
      part && [
        refdes,
        part.package.name,
        Math.round((part.x - origin.x + 12.5) * 1000) / 1000,
        Math.round((part.y - origin.y + 20.25) * 1000) / 1000,
        ((part.turn % 360) + 360) % 360,
        part.side,
      ]
    );
  });
  return { found, notes: result.value.report.notes.map(({ code }) => code) };
}
const wanted = PARTS.map(([refdes, name, x, y, turn, side]) => [refdes, name, x, y, (turn + 720) % 360, side]);
const lines = (heading: string, row: (part: Row) => readonly (string | number)[], by: string) =>
  [heading, ...PARTS.map((part) => row(part).join(by))].join('\r\n');
const comma = (value: number) => String(value).replace('.', ',');

describe('dialects that no outside board shows', () => {
  it('German headings, semicolons, decimal commas, UTF-16', () => {
    const text = lines(
      'Bauteil;Gehäuse;X-Koord;Y-Koord;Drehung;Seite',
      ([refdes, name, x, y, turn, side]) => [refdes, name, comma(x), comma(y), turn, side === 'top' ? 'Oben' : 'Unten'],
      ';',
    );
    expect(read('liste.csv', utf16(text)).found).toEqual(wanted);
  });

  it('two-word headings with plural units', () => {
    const mil = (mm: number) => (mm / 0.0254).toFixed(4);
    const text = lines(
      'Part Designator,Center X (mils),Center Y (mils),Rotation (deg),Board Side,Package Type',
      ([refdes, name, x, y, turn, side]) => [refdes, mil(x), mil(y), turn, `${side} side`, name],
      ',',
    );
    expect(read('place.csv', bytesOf(text)).found).toEqual(wanted);
  });

  it('a yes-or-no column for the solder side', () => {
    const text = lines(
      'RefDes,Package,PosX,PosY,Angle,Solder Side',
      ([refdes, name, x, y, turn, side]) => [refdes, name, x, y, turn, side === 'bottom' ? 'YES' : 'NO'],
      ',',
    );
    expect(read('place.csv', bytesOf(text)).found).toEqual(wanted);
  });

  it('tabs, a quoted line break within a row, columns in odd order', () => {
    const text = lines(
      'Layer\tComment\tRotation\tY(mm)\tPackage\tX(mm)\tRefDes',
      ([refdes, name, x, y, turn, side]) => [side, '"two\nlines"', turn, y, name, x, refdes],
      '\t',
    );
    expect(read('place.txt', bytesOf(text)).found).toEqual(wanted);
  });

  it('y of the bottom counted downwards: turned back, said, and left alone when so chosen', () => {
    const text = lines(
      'Ref,Package,X(mm),Y(mm),Rot,Side',
      ([refdes, name, x, y, turn, side]) => [refdes, name, x, side === 'bottom' ? -y : y, turn, side],
      ',',
    );
    const turned = read('place.csv', bytesOf(text));
    expect(turned.found).toEqual(wanted);
    expect(turned.notes).toContain('bottom-y-negated');
    const left = read('place.csv', bytesOf(text), { bottomY: 'asSeenFromTop' });
    expect(left.found[4]?.[3]).toBe(-10);
    expect(left.notes).not.toContain('bottom-y-negated');
  });
});
