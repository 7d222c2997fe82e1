import { test as doorTest, expect } from './door.ts';
import { complaintsOf, windowOf } from './window.ts';

/** `w`: the window, opened at its door; when the test is over the page must have complained of nothing. */
export const test = doorTest.extend<{ w: ReturnType<typeof windowOf> }>({
  w: async ({ page, door }, use) => {
    const complaints = complaintsOf(page);
    await page.goto(door.address());
    await use(windowOf(page));
    expect(complaints).toEqual([]);
  },
});
export { expect };
