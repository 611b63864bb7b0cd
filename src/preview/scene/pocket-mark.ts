import { CanvasTexture, Sprite, SpriteMaterial, SRGBColorSpace } from 'three';

/** Drawn so many times as large, for sharp screens. */
const sharpness = 3;
/** Radius of the mark for a pocket of 1 mm3, and the least and most of any, px. */
const [ofOne, least, most] = [4, 4, 9];

/**
 * A mark that faces the eye, before everything else, larger for more air: a full disc where air stays whatever is assumed, a
 * dashed ring where it only may. `ink` and `paper` are its color and that of its edge.
 */
export function pocketMark(
  { stays, most: volume }: { readonly stays: 'all' | 'some'; readonly most: number },
  { ink, paper }: { readonly ink: string; readonly paper: string },
  { viewHeight, fovDegrees }: { readonly viewHeight: number; readonly fovDegrees: number },
): Sprite {
  const radius = Math.min(most, Math.max(least, ofOne * Math.cbrt(volume)));
  const edge = 2;
  const size = 2 * (radius + edge);
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(size * sharpness);
  canvas.height = canvas.width;
  const pen = canvas.getContext('2d');
  if (!pen) return new Sprite();
  pen.scale(sharpness, sharpness);
  const round = (): void => {
    pen.beginPath();
    pen.arc(size / 2, size / 2, radius, 0, 2 * Math.PI);
  };
  round();
  pen.lineWidth = 2 * edge;
  pen.strokeStyle = paper;
  pen.stroke();
  pen.lineWidth = 2.2;
  pen.strokeStyle = ink;
  round();
  if (stays === 'all') {
    pen.fillStyle = ink;
    pen.fill();
  } else {
    pen.setLineDash([radius * 0.62, radius * 0.43]);
    pen.stroke();
  }
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  const sprite = new Sprite(new SpriteMaterial({ map, depthTest: false, sizeAttenuation: false }));
  const px = (2 * Math.tan((fovDegrees * Math.PI) / 360)) / viewHeight;
  sprite.scale.set(size * px, size * px, 1);
  sprite.renderOrder = 55;
  return sprite;
}
