import type { Point, Side } from '../../../shared-types/geometry.ts';
import { SECONDS } from './hands.ts';
import type { Technician } from './technician.ts';

/** Both photos in, each laid on the drawing by the middles of its holes. */
export async function layPhotos(at: Technician, holes: readonly Point[]): Promise<void> {
  const { hands, page } = at;
  hands.begin('photos');
  hands.think();
  await hands.press('2');
  for (const side of ['top', 'bottom'] as const) {
    if (side === 'bottom') await hands.press('o');
    await takePhoto(at, side);
    await matchHoles(at, side, holes);
  }
  hands.begin('photos');
  await hands.press('o');
  await hands.press('1');
  await page.mouse.move(0, 0);
}

async function takePhoto({ hands, page, press, bench }: Technician, side: Side): Promise<void> {
  hands.begin('photos');
  hands.think();
  const chooser = page.waitForEvent('filechooser');
  await press(page.getByRole('button', { name: 'Add photos' }));
  // The system's own sheet: a thought, a file pointed at and pressed twice.
  hands.outside({ thoughts: 1, points: 1, buttons: 4, seconds: SECONDS.think + 1.1 + 4 * SECONDS.button });
  const name = `${side}.jpg`;
  await (await chooser).setFiles([{ name, mimeType: 'image/jpeg', buffer: bench.photos[side] }]);
  await page.getByText(name).waitFor();
  await page.getByText(/^Reading/).waitFor({ state: 'hidden' });
  await page.waitForTimeout(1200);
}

async function matchHoles({ hands, lie, picture, aimed, bench }: Technician, side: Side, holes: readonly Point[]) {
  hands.begin('match points');
  hands.think();
  await hands.press('j');
  const { toPage } = await lie();
  for (const hole of holes) {
    const lies = (await picture(side))({ ...hole, z: 0 });
    await hands.click(aimed(toPage(lies)), 4);
    await hands.click(aimed(toPage(hole)), 12);
  }
  await bench.shot(`05-matched-${side}`);
  await hands.press('j');
}
