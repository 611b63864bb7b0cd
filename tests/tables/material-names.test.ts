import { describe, expect, it } from 'vitest';
import { halfMaterial, heatRow, materialName } from '../../src/tables/index.ts';

describe('high-temperature resin', () => {
  it.each([
    'high temperature resin',
    'high-temperature resin',
    'High Temperature Resin',
    'high-temp resin',
    'high temp resin',
    'hightemp resin',
    'HighTemp Resin',
    'high_temp_resin',
    'hi-temp resin',
    'HT resin',
    'HT-resin',
    'H.T. resin',
    'resin, high temperature',
    'resin HT',
    'SLA resin, high-temp',
    'high-temp',
  ])('%s is one thing, of which no figure is at hand', (written) => {
    expect(materialName(written)).toBe('high-temperature resin');
    expect(heatRow(written)).toMatchObject({ name: 'high-temperature resin' });
    expect(heatRow(written)?.limitC).toBeUndefined();
    expect(halfMaterial(written)).toBeUndefined();
  });
  it.each([
    ['resin', 'standard resin'],
    ['high-impact resin', 'standard resin'],
    ['light resin', 'standard resin'],
    ['HT PLA', 'PLA'],
  ])('%s is not', (written, name) => {
    expect(heatRow(written)?.name).toBe(name);
  });
  it('a resin of that kind with a name of its own stays apart from others', () => {
    expect(materialName('HT resin A')).not.toBe(materialName('HT resin B'));
    expect(materialName('HT  Resin A')).toBe(materialName('high temp resin a'));
  });
});
