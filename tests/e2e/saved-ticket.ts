import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { readTicketFile } from '../../main/files/ticket-file.ts';
import type { Corner } from '../../shared-types/geometry.ts';
import { expect } from './door.ts';

/** Saves, and reads the one ticket of the shelf as its file has it. */
export async function savedTicket(page: Page, shelf: string) {
  await page.keyboard.press('Control+s');
  await expect(page.locator('.save-state')).toContainText('Saved');
  const name = readdirSync(shelf).find((one) => one.endsWith('.hmticket')) ?? '';
  const read = readTicketFile(new Uint8Array(readFileSync(join(shelf, name))), name);
  if (!read.ok) throw new Error(read.problem.code);
  return read.value;
}

/** Corners and bends are the same to a millionth of a millimetre. */
export function expectSame(actual: readonly Corner[], expected: readonly Corner[]): void {
  expect(actual).toHaveLength(expected.length);
  for (const [index, corner] of expected.entries()) {
    expect(Math.abs(actual[index].x - corner.x)).toBeLessThan(1e-6);
    expect(Math.abs(actual[index].y - corner.y)).toBeLessThan(1e-6);
    expect(Math.abs((actual[index].bulge ?? 0) - (corner.bulge ?? 0))).toBeLessThan(1e-6);
  }
}
