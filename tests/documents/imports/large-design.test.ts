import { expect, test } from 'vitest';
import { importBoard } from '../../../main/document/imports/import-board.ts';

const LARGE_BYTES = 60 * 1024 * 1024;
const PARTS = 3000;

/** Writes texts one after the other into bytes of a known size, so that the whole never stands as a text. */
function makeWriter(size: number) {
  const bytes = new Uint8Array(size);
  const encoder = new TextEncoder();
  let at = 0;
  return {
    write: (text: string) => {
      at += encoder.encodeInto(text, bytes.subarray(at)).written;
    },
    room: () => size - at,
    done: () => bytes.subarray(0, at),
  };
}

/** An invented IPC-2581 file: 3000 parts, and copper features up to the size. */
function largeDesign(): Uint8Array {
  const { write, room, done } = makeWriter(LARGE_BYTES);
  write('<?xml version="1.0"?><IPC-2581 revision="C"><Ecad name="e"><CadHeader units="MILLIMETER"/><CadData>');
  write(
    '<Layer name="TOP" layerFunction="CONDUCTOR" side="TOP"/><Layer name="BOT" layerFunction="CONDUCTOR" side="BOTTOM"/>',
  );
  write('<Step name="board"><Profile><Polygon><PolyBegin x="0" y="0"/><PolyStepSegment x="200" y="0"/>');
  write(
    '<PolyStepSegment x="200" y="150"/><PolyStepSegment x="0" y="150"/><PolyStepSegment x="0" y="0"/></Polygon></Profile>',
  );
  write('<Package name="P" pinOne="1"><Outline><Polygon><PolyBegin x="-1" y="-0.5"/><PolyStepSegment x="1" y="-0.5"/>');
  write(
    '<PolyStepSegment x="1" y="0.5"/><PolyStepSegment x="-1" y="0.5"/><PolyStepSegment x="-1" y="-0.5"/></Polygon></Outline>',
  );
  write('<Pin number="1"><Location x="-0.8" y="0"/></Pin><Pin number="2"><Location x="0.8" y="0"/></Pin></Package>');
  for (let index = 0; index < PARTS; index++) {
    const side =
      index % 2 === 0 ? 'layerRef="TOP"><Xform rotation="0"/>' : 'layerRef="BOT"><Xform rotation="0" mirror="true"/>';
    write(
      `<Component refDes="R${index}" packageRef="P" ${side}<Location x="${1 + (index % 60) * 3}" y="${2 + Math.floor(index / 60) * 2}"/></Component>`,
    );
  }
  const feature =
    '<Set net="N"><Features><Polygon><PolyBegin x="1.25" y="2.5"/><PolyStepSegment x="3.75" y="2.5"/><PolyStepSegment x="3.75" y="9.5"/></Polygon></Features></Set>\n';
  write('<LayerFeature layerRef="TOP">');
  while (room() > 2000) write(feature.repeat(8).slice(0, Math.floor((room() - 500) / feature.length) * feature.length));
  write('</LayerFeature></Step></CadData></Ecad></IPC-2581>');
  return done();
}

test('IPC-2581 of 60 MB: in bounded memory, and whole', () => {
  const before = process.memoryUsage.rss();
  const bytes = largeDesign();
  expect(bytes.length).toBeGreaterThan(59 * 1024 * 1024);
  const start = performance.now();
  const result = importBoard([{ name: 'large.xml', bytes }]);
  const seconds = (performance.now() - start) / 1000;
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  // Highest resident size of this process so far (kilobytes), which holds the 60 MB of the file too.
  const peakMb = process.resourceUsage().maxRSS / 1024;
  const grownMb = peakMb - before / 1024 / 1024;
  console.log(
    `60 MB IPC-2581: ${seconds.toFixed(2)} s, peak ${peakMb.toFixed(0)} MB, ${grownMb.toFixed(0)} MB more than before`,
  );
  expect(grownMb).toBeLessThan(400);
  expect(result.value.board.parts).toHaveLength(PARTS);
  expect(result.value.report.counts).toMatchObject({ top: PARTS / 2, bottom: PARTS / 2 });
}, 60_000);
