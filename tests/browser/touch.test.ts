import { readFileSync } from 'node:fs';
import type { CDPSession, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { onScreen } from './drag.ts';
import { buttons, drawn, keepPicture, marked, shop } from './shop.ts';

// Fingers on a tablet, as the browser's own touches: one turns the picture, two pinch it, one moves a thing by hand.

const { put, serve, show } = shop();

type Finger = readonly [x: number, y: number];

let page: Page;
let devtools: CDPSession;
let complaints: readonly string[];
const plan = put('touch/plan.yaml', buttons);

beforeAll(async () => {
  const { url } = await serve(plan);
  ({ page, complaints } = await show(url, { viewport: { width: 1024, height: 768 }, hasTouch: true }));
  devtools = await page.context().newCDPSession(page);
  await marked(page, 'mold built');
});

const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]) =>
  devtools.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: fingers.map(([x, y], id) => ({ x: Math.round(x), y: Math.round(y), id })),
  });

/** Fingers put down, moved straight in so many steps, and lifted. */
async function drag(from: readonly Finger[], to: readonly Finger[], steps = 6): Promise<void> {
  await send('touchStart', from);
  for (let k = 1; k <= steps; k++) {
    const share = k / steps;
    await send(
      'touchMove',
      from.map(([x, y], i) => [x + share * (to[i][0] - x), y + share * (to[i][1] - y)] as const),
    );
    await drawn(page);
  }
  await send('touchEnd', []);
  await drawn(page);
}

/** Middle of the disc and pixels to a millimeter, as they are drawn. */
async function scaleNow(): Promise<{ x: number; y: number; scale: number }> {
  const said = (await page.locator('canvas').getAttribute('data-disc')) ?? '';
  const [x, y, scale] = said.split(' ').map(Number);
  return { x, y, scale };
}

const middle = async (): Promise<Finger> => {
  const box = await page.locator('canvas').boundingBox();
  if (!box) throw new Error('no picture');
  return [box.x + box.width / 2, box.y + box.height / 2];
};

describe('fingers on the picture', () => {
  it('one turns it', async () => {
    await page.getByRole('button', { name: 'from above' }).tap();
    await drawn(page);
    const before = await scaleNow();
    const [x, y] = await middle();
    await drag([[x, y]], [[x + 120, y - 90]]);
    const after = await scaleNow();
    // Turned, not moved: the middle stays about where it was, and a millimeter along x is seen at a slant.
    expect(after.scale / before.scale).toBeLessThan(0.97);
    expect(await page.locator('canvas').evaluate((canvas) => getComputedStyle(canvas).touchAction)).toBe(
      'none',
    );
  });

  it('two spread make it as much larger as they are farther apart', async () => {
    await page.getByRole('button', { name: 'from above' }).tap();
    await drawn(page);
    const before = await scaleNow();
    const [x, y] = await middle();
    await drag(
      [
        [x - 60, y],
        [x + 60, y],
      ],
      [
        [x - 90, y],
        [x + 90, y],
      ],
    );
    const after = await scaleNow();
    expect(after.scale / before.scale).toBeGreaterThan(1.25);
    expect(after.scale / before.scale).toBeLessThan(1.75);
    // And the page itself was not zoomed.
    expect(await page.evaluate(() => visualViewport?.scale)).toBe(1);
  });

  it('keys do the same: nearer, turned, moved', async () => {
    await page.getByRole('button', { name: 'from above' }).tap();
    await drawn(page);
    const from = await scaleNow();
    const canvas = page.locator('canvas');
    await canvas.press('+');
    await drawn(page);
    // Nearer by a tenth is a ninth larger at the middle; a little less on the parting plane below it.
    const nearer = await scaleNow();
    expect(nearer.scale / from.scale).toBeGreaterThan(1.05);
    await canvas.press('-');
    await drawn(page);
    expect((await scaleNow()).scale).toBeCloseTo(from.scale, 3);
    await canvas.press('ArrowRight');
    await drawn(page);
    const moved = await scaleNow();
    expect(Math.abs(moved.x - from.x)).toBeGreaterThan(3);
    expect(moved.scale).toBeCloseTo(from.scale, 3);
    for (let presses = 0; presses < 8; presses++) await canvas.press('Shift+ArrowDown');
    for (let presses = 0; presses < 15; presses++) await canvas.press('Shift+ArrowLeft');
    await drawn(page);
    // At a slant and a quarter round, 2 pi / height to a press and eight times that: x leads away from the eye.
    expect((await scaleNow()).scale / moved.scale).toBeLessThan(0.85);
  });

  it('one moves a master while things are moved by hand, another finger then does nothing', async () => {
    await page.getByRole('button', { name: 'Move by hand' }).tap();
    await page.getByRole('button', { name: 'from above' }).tap();
    await drawn(page);
    const [fx, fy] = await onScreen(page, [32, 0]);
    const [tx, ty] = await onScreen(page, [26, 0]);
    const before = await scaleNow();
    await send('touchStart', [[fx, fy]]);
    await page.getByRole('region', { name: 'Chosen: button-1' }).waitFor();
    await send('touchMove', [[tx, ty]]);
    // A palm on the picture.
    await send('touchStart', [
      [tx, ty],
      [tx - 150, ty + 60],
    ]);
    await send('touchMove', [
      [tx, ty],
      [tx - 90, ty + 90],
    ]);
    await send('touchEnd', []);
    await page.locator('.nearby[data-error="0"]').waitFor();
    const after = await scaleNow();
    expect(after.scale).toBeCloseTo(before.scale, 6);
    await keepPicture(page, 'touch-moved');
    // By the mouse: right after two fingers the browser may take a tap for a part of their gesture.
    await page.getByRole('button', { name: 'Save plan' }).click();
    await page.getByRole('button', { name: 'Saved' }).waitFor();
    // The ring of three became a list; the first lies six millimeters further in.
    expect(readFileSync(plan, 'utf8')).toContain('{ radius: 26, angle: 0 }');
    expect(readFileSync(plan, 'utf8')).toContain('{ radius: 32, angle: 120 }');
    expect(complaints).toEqual([]);
  });
});
