const mmPerInch = 25.4;

/**
 * Nominal diameter of a thread as people write it (`M10`, `M10x1.5`, `3/8`, `3/8-16 UNC`, `1 1/8 in`), mm: it is the
 * number in the name (ISO 261, ASME B1.1). Undefined where there is none.
 */
export function threadDiameter(written: string): number | undefined {
  const metric = /^\s*M\s*(\d{1,3}(?:\.\d+)?)(?![\d.])/i.exec(written);
  if (metric) return positive(Number(metric[1]));
  const inch = /^\s*(?:(\d{1,2})[\s-]+)?(\d{1,2})\/(\d{1,2})(?!\d)/.exec(written);
  if (!inch) return undefined;
  const [, whole = '0', over, under] = inch;
  return positive((Number(whole) + Number(over) / Number(under)) * mmPerInch);
}

const positive = (value: number): number | undefined =>
  value > 0 && Number.isFinite(value) ? value : undefined;
