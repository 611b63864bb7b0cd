import { expect, test } from 'vitest';
import { TextBytes } from '../../src/export/three-mf/text-bytes.ts';
import { randomOf } from '../mesh/figurines.ts';

const written = (write: (text: TextBytes) => void): string => {
  const text = new TextBytes(64);
  write(text);
  return new TextDecoder().decode(text.take());
};

/** The first of seven, eight and nine digits that JavaScript reads back as the same float32. */
const plainly = (value: number): string => {
  const digits = [7, 8].find((many) => Math.fround(Number(value.toPrecision(many))) === value) ?? 9;
  return String(Number(value.toPrecision(digits)));
};

test('a float32 is written as JavaScript writes it, and reads back as the same', () => {
  const random = randomOf(3);
  const bits = new Uint32Array(1);
  const float = new Float32Array(bits.buffer);
  const powers = Array.from({ length: 14 }, (_, i) => 10 ** (i - 5));
  const near = powers.flatMap((power) => [-2, -1, 0, 1, 2].map((step) => power * (1 + step * 2 ** -23)));
  const lengths = Array.from(
    { length: 4_000 },
    (_, i) => ((i % 2 ? 1 : -1) * random() * 300) / (i % 7 || 1e3),
  );
  const any = Array.from({ length: 4_000 }, () => {
    bits[0] = random() * 2 ** 32;
    return Number.isFinite(float[0]) ? float[0] : 0;
  });
  for (const value of [0, -0, 1 / 3, 2 ** -20, ...near, ...lengths, ...any].map(Math.fround)) {
    const text = written((to) => to.float32(value));
    expect(text).toBe(plainly(value));
    expect(Math.fround(Number(text)) === value).toBe(true);
  }
});

test('counts', () => {
  for (const value of [0, 9, 10, 99_999, 100_000, 2 ** 32 - 1])
    expect(written((to) => to.count(value))).toBe(String(value));
});
