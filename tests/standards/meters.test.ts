import { describe, expect, it } from 'vitest';
import { meterOf } from '../../grammar/vocabulary/meters';

const bar = (sign: string): string | undefined => {
  const meter = meterOf(sign);
  return meter && `${meter.beats}/${meter.beatValue}`;
};

describe('the bar of a meter sign', () => {
  // Quantz, Versuch, 1752, chapter V, section 13.
  it('is four crotchets under C and two minims under cut C', () => {
    expect(bar('C')).toBe('4/4');
    expect(bar('cut-C')).toBe('2/2');
  });

  // Quantz, Versuch, 1752, chapter V, section 14.
  it('is three semibreves under 3/1', () => {
    expect(bar('3/1')).toBe('3/1');
  });

  // Hotteterre, L'Art de préluder, 1719, chapter XI.
  it.each([
    ['2', '2/2'],
    ['3', '3/4'],
    ['3/4', '3/4'],
    ['3/2', '3/2'],
    ['6/4', '6/4'],
    ['3/8', '3/8'],
    ['6/8', '6/8'],
    ['9/8', '9/8'],
    ['12/8', '12/8'],
  ])('is under %s as under %s', (sign, length) => {
    expect(bar(sign)).toBe(length);
  });

  // From memory: perfect tempus, a breve of three semibreves.
  it('is three semibreves under O', () => {
    expect(bar('O')).toBe('3/1');
  });

  it('is as it stands under any other fraction of a written value', () => {
    expect(bar('5/4')).toBe('5/4');
    expect(bar('99/128')).toBe('99/128');
  });

  it.each(['cut-O', '5', '3/3', '0/4', '100/4', '3/256', 'constructor', ''])('is not known under %s', (sign) => {
    expect(bar(sign)).toBeUndefined();
  });
});
