import { expect, test } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import { ownToBoard } from '../../../../../shared-types/board.ts';
import { problemSentence } from '../../../../../shared-types/words/problems.ts';

/** An invented board of two parts in inches, with a round-ended cutout, and a panel step that holds no parts. */
const INVENTED = `<?xml version="1.0" encoding="UTF-8"?>
<IPC-2581 revision="B" xmlns="http://webstds.ipc.org/2581">
 <Bom name="b"><BomItem OEMDesignNumberRef="r" quantity="1"><RefDes name="R1" packageRef="CHIP" populate="false" layerRef="TOP"/></BomItem></Bom>
 <Ecad name="e"><CadHeader units="INCH"/><CadData>
  <Layer name="TOP" layerFunction="CONDUCTOR" side="TOP" polarity="POSITIVE"/>
  <Layer name="BOTTOM" layerFunction="CONDUCTOR" side="BOTTOM" polarity="POSITIVE"/>
  <Step name="panel"><Profile><Polygon><PolyBegin x="-9" y="-9"/><PolyStepSegment x="9" y="-9"/><PolyStepSegment x="9" y="9"/><PolyBegin x="-9" y="-9"/></Polygon></Profile></Step>
  <Step name="board">
   <Profile>
    <Polygon><PolyBegin x="1" y="1"/><PolyStepSegment x="3" y="1"/><PolyStepSegment x="3" y="2"/><PolyStepSegment x="1" y="2"/><PolyStepSegment x="1" y="1"/></Polygon>
    <Cutout><PolyBegin x="2.5" y="1.5"/><PolyStepCurve x="2.7" y="1.5" centerX="2.6" centerY="1.5" clockwise="false"/><PolyStepCurve x="2.5" y="1.5" centerX="2.6" centerY="1.5" clockwise="false"/></Cutout>
   </Profile>
   <Package name="CHIP" type="OTHER" pinOne="1" height="0.02">
    <Outline><Polygon><PolyBegin x="-0.06" y="-0.03"/><PolyStepSegment x="0.06" y="-0.03"/><PolyStepSegment x="0.06" y="0.03"/><PolyStepSegment x="-0.06" y="0.03"/><PolyStepSegment x="-0.06" y="-0.03"/></Polygon></Outline>
    <Pin number="1" type="SURFACE"><Location x="-0.05" y="0.01"/></Pin>
    <Pin number="2" type="SURFACE"><Location x="0.05" y="0.01"/></Pin>
   </Package>
   <Component refDes="R1" packageRef="CHIP" layerRef="TOP" part="10k"><Xform rotation="90.0"/><Location x="1.5" y="1.5"/></Component>
   <Component refDes="R2" packageRef="CHIP" layerRef="BOTTOM" part="10k"><Xform rotation="30.0" mirror="true"/><Location x="2" y="1.5"/></Component>
  </Step>
 </CadData></Ecad>
</IPC-2581>
`;

const file = (text: string) => ({ name: 'board.xml', bytes: new TextEncoder().encode(text) });

function boardOf(text: string) {
  const result = importBoard([file(text)]);
  if (!result.ok) throw new Error(problemSentence(result.problem));
  return result.value;
}

test('the step with the parts, its profile in mm, a cutout of arcs', () => {
  const { board, report } = boardOf(INVENTED);
  expect(report.outline).toMatchObject({ cutouts: 1, arcs: 2 });
  expect(report.outline.lengthMm).toBeCloseTo(50.8, 6);
  expect(report.outline.widthMm).toBeCloseTo(25.4, 6);
  expect(board.laminate.layers).toHaveLength(2);
  expect(board.parts.map(({ refdes, side, fitted }) => [refdes, side, fitted])).toEqual([
    ['R1', 'top', false],
    ['R2', 'bottom', true],
  ]);
  const [top] = board.parts;
  expect([top.x, top.y, top.turn]).toEqual([12.7, 12.7, 90]);
  expect(top.package).toMatchObject({ lengthMm: 3.048, widthMm: 1.524, heightMm: 0.508 });
  expect(top.pinCount).toBe(2);
});

test('a mirrored part is mirrored after its rotation: pin one stands where both together bring it', () => {
  const { board } = boardOf(INVENTED);
  const bottom = board.parts[1];
  expect(bottom.turn).toBe(150);
  // By hand: (-0.05, 0.01) inch turned by 30 degrees, then x to -x, at (25.4, 12.7) mm.
  const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  const turned = { x: 25.4 * (-0.05 * c - 0.01 * s), y: 25.4 * (-0.05 * s + 0.01 * c) };
  const at = ownToBoard(bottom, bottom.pin1 ?? { x: 0, y: 0 });
  expect(at.x).toBeCloseTo(25.4 - turned.x, 5);
  expect(at.y).toBeCloseTo(12.7 + turned.y, 5);
});

test('an outline drawn as seen from the other side (revision C) is the body; a text beside it is not', () => {
  const assembly =
    '<AssemblyDrawing><Outline><Polygon><PolyBegin x="-0.06" y="0.1"/><PolyStepSegment x="0.06" y="0.1"/><PolyStepSegment x="0.06" y="0.2"/><PolyStepSegment x="-0.06" y="0.2"/></Polygon></Outline></AssemblyDrawing>';
  const { board } = boardOf(
    INVENTED.replace('<Outline>', '<OtherSideView><Outline>').replace(
      '</Outline>',
      `</Outline>${assembly}</OtherSideView>`,
    ),
  );
  expect(board.parts[0]).toMatchObject({ x: 12.7, y: 12.7, package: { lengthMm: 3.048, widthMm: 1.524 } });
});

test('a shield that the file draws becomes a cover of its outline and height', () => {
  const outline = [-0.3, -0.2, 0.3, -0.2, 0.3, 0.2, -0.3, 0.2, -0.3, -0.2];
  const steps = outline.flatMap((x, at) =>
    at % 2 ? [] : [`<Poly${at ? 'StepSegment' : 'Begin'} x="${x}" y="${outline[at + 1]}"/>`],
  );
  const pack = `<Package name="SCREEN" type="OTHER" height="0.1"><Outline><Polygon>${steps.join('')}</Polygon></Outline></Package>`;
  const placed = `<Component refDes="SH1" packageRef="SCREEN" layerRef="TOP" part="lid"><Xform rotation="0"/><Location x="1.5" y="1.5"/></Component>`;
  const text = INVENTED.replace('populate="false"', 'populate="true"').replace(
    '<Component refDes="R1"',
    `${pack}${placed}<Component refDes="R1"`,
  );
  const { board } = boardOf(text);
  expect(board.covers).toMatchObject([
    { id: 'SH1', kind: 'can', side: 'top', x: 12.7, y: 12.7, lengthMm: 15.24, widthMm: 10.16, heightMm: 2.54 },
  ]);
  expect(board.parts.map(({ refdes }) => refdes)).toEqual(['R1', 'R2']);
});

const bomb = `<!DOCTYPE a [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]>`;
test.each([
  ['cut short', INVENTED.slice(0, 1500)],
  ['entities of its own', INVENTED.replace('<IPC-2581', `${bomb}<IPC-2581`)],
  ['an unknown entity', INVENTED.replace('part="10k"', 'part="&b;"')],
  ['nested deep', INVENTED.replace('<Bom ', `${'<a>'.repeat(300_000)}<Bom `)],
  [
    'an element of thousands of attributes',
    INVENTED.replace('<Bom ', `<a ${Array.from({ length: 6000 }, (_, index) => `a${index}=""`).join(' ')}/><Bom `),
  ],
  ['unknown units', INVENTED.replace('INCH', 'CUBIT')],
])('%s: one problem that names the file', (_name, text) => {
  const result = importBoard([file(text)]);
  if (result.ok) throw new Error('expected a problem');
  expect(result.problem).toMatchObject({ code: 'unknown-file-kind', file: 'board.xml' });
  expect(problemSentence(result.problem)).toMatch(/IPC-2581/);
});

test('own entities are refused for what they are', () => {
  const result = importBoard([file(INVENTED.replace('<IPC-2581', `${bomb}<IPC-2581`))]);
  expect(result.ok ? '' : problemSentence(result.problem)).toMatch(/entities of its own/);
});
