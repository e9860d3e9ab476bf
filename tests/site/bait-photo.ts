import Color from 'colorjs.io';
import type { Page } from 'playwright-core';
import sharp from 'sharp';

/** A photo: on the left a bait, on the right a white card, under a lamp. */
export async function photo(bait: string, lamp: readonly [number, number, number]): Promise<Buffer> {
  const under = (hex: string): { r: number; g: number; b: number } => {
    const linear = new Color(hex).to('srgb-linear').coords.map((channel, at) => channel! * lamp[at]!);
    const [r, g, b] = new Color('srgb-linear', linear as [number, number, number]).to('srgb').coords;
    return { r: Math.round(r! * 255), g: Math.round(g! * 255), b: Math.round(b! * 255) };
  };
  const half = (background: { r: number; g: number; b: number }): Promise<Buffer> =>
    sharp({ create: { width: 400, height: 500, channels: 3, background } })
      .png()
      .toBuffer();
  return sharp({ create: { width: 800, height: 500, channels: 3, background: '#808080' } })
    .composite([
      { input: await half(under(bait)), left: 0, top: 0 },
      { input: await half(under('#f3f3f3')), left: 400, top: 0 },
    ])
    .png()
    .toBuffer();
}

/** Touches the photo at parts of its width and height. */
export async function touch(page: Page, x: number, y: number): Promise<void> {
  const canvas = page.locator('.photo-dialog canvas');
  // A photo that was chosen before is drawn once the dialog is open.
  await canvas.waitFor();
  const { width, height } = (await canvas.boundingBox())!;
  await canvas.click({ position: { x: width * x, y: height * y } });
}

/** Chooses a photo for a button that asks for one. */
export async function choosePhoto(page: Page, button: string, buffer: Buffer, name = 'bait.png'): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: button, exact: true }).first().click(),
  ]);
  await chooser.setFiles({ name, mimeType: 'image/png', buffer });
}
