import { CanvasTexture, Sprite, SpriteMaterial, SRGBColorSpace } from 'three';

/** Height of the letters in the picture, px of the page. */
const letterHeight = 13;
/** Drawn so many times as large, for sharp screens. */
const sharpness = 2;

/** Colors of the page's style at this moment: the picture keeps to the light or the dark look. */
export const styleColor = (name: string): string =>
  getComputedStyle(document.documentElement).getPropertyValue(name).trim();

/**
 * A short text that faces the eye, before everything else and always of one size. `viewHeight` is the height of the
 * picture in px, `fovDegrees` that of the camera.
 */
export function textLabel(text: string, ink: string, viewHeight: number, fovDegrees: number): Sprite {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!pen) return new Sprite();
  const font = `600 ${letterHeight * sharpness}px system-ui, sans-serif`;
  pen.font = font;
  const pad = 5 * sharpness;
  canvas.width = Math.ceil(pen.measureText(text).width) + 2 * pad;
  canvas.height = letterHeight * sharpness + 1.4 * pad;
  pen.font = font;
  pen.fillStyle = styleColor('--paper');
  pen.beginPath();
  pen.roundRect(0, 0, canvas.width, canvas.height, 4 * sharpness);
  pen.fill();
  pen.fillStyle = ink;
  pen.textBaseline = 'middle';
  pen.fillText(text, pad, canvas.height / 2);
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  const sprite = new Sprite(new SpriteMaterial({ map, depthTest: false, sizeAttenuation: false }));
  // Without attenuation a sprite of height 1 is as high as what lies at distance 1.
  const px = (2 * Math.tan((fovDegrees * Math.PI) / 360)) / viewHeight;
  sprite.scale.set((canvas.width / sharpness) * px, (canvas.height / sharpness) * px, 1);
  // Over its place, not on it: what it names stays in sight.
  sprite.center.set(0.5, -0.3);
  sprite.renderOrder = 60;
  return sprite;
}

/** Gives back what a label holds in the graphics memory. */
export function dropLabel(sprite: Sprite): void {
  sprite.material.map?.dispose();
  sprite.material.dispose();
}
