import { describe, expect, it } from 'vitest';
import type { Clef } from '../../grammar/tree';
import { agreeingLine, clefOf, clefsAgree, lineUnder } from '../../grammar/vocabulary/clefs';

const MIDDLE_C = 28;
const name = (position: number): string => `${'CDEFGAB'[position % 7]}${Math.floor(position / 7)}`;

function clef(text: string): Clef {
  const read = clefOf(text);
  if (read === undefined) throw new Error(`no clef: ${text}`);
  return read;
}

const lines = (text: string, count = 5): string =>
  Array.from({ length: count }, (_, i) => name(lineUnder(clef(text), i + 1))).join(' ');
const spaces = (text: string): string =>
  Array.from({ length: 4 }, (_, i) => name(lineUnder(clef(text), i + 1) + 1)).join(' ');

// The classes G, C and F, nine clefs in all, and the French clef on the lowest line: Quantz, Versuch, 1752, chapter V,
// section 1. The notes of lines and spaces follow from the meaning of the clef letters, which is common practice.
describe('the nine clefs', () => {
  it.each([
    ['G1', 'G4 B4 D5 F5 A5', 'A4 C5 E5 G5', -4],
    ['G2', 'E4 G4 B4 D5 F5', 'F4 A4 C5 E5', -2],
    ['C1', 'C4 E4 G4 B4 D5', 'D4 F4 A4 C5', 0],
    ['C2', 'A3 C4 E4 G4 B4', 'B3 D4 F4 A4', 2],
    ['C3', 'F3 A3 C4 E4 G4', 'G3 B3 D4 F4', 4],
    ['C4', 'D3 F3 A3 C4 E4', 'E3 G3 B3 D4', 6],
    ['F3', 'B2 D3 F3 A3 C4', 'C3 E3 G3 B3', 8],
    ['F4', 'G2 B2 D3 F3 A3', 'A2 C3 E3 G3', 10],
    ['F5', 'E2 G2 B2 D3 F3', 'F2 A2 C3 E3', 12],
  ])(
    '%s has the lines %s, the spaces %s, and middle C %i steps above its lowest line',
    (text, onLines, between, steps) => {
      expect(lines(text)).toBe(onLines);
      expect(spaces(text)).toBe(between);
      expect(MIDDLE_C - lineUnder(clef(text), 1)).toBe(steps);
    },
  );

  it('C5 and F3 are one in pitch', () => {
    expect(lines('C5')).toBe(lines('F3'));
  });
});

// Common practice: the c clef stands two lines above the f clef, the g clef two lines above the c clef.
describe('two clefs on one stave', () => {
  it.each(['F4+C6', 'F5+C7', 'F2+C4', 'C1+G3', 'F3+G7'])('%s agree', (text) => {
    const [first = '', second = ''] = text.split('+');
    expect(clefsAgree(clef(first), clef(second))).toBe(true);
  });

  it('disagree on any other line, and the line where they would agree is known', () => {
    expect(clefsAgree(clef('F4'), clef('C5'))).toBe(false);
    expect(agreeingLine(clef('C1'), clef('F4'))).toBe(6);
    expect(agreeingLine(clef('F4'), clef('C6'))).toBe(4);
    expect(agreeingLine(clef('G1'), clef('C1'))).toBe(3);
  });
});

// Common practice of Italian and English keyboard staves of more than five lines.
describe('wider staves', () => {
  it('of six lines with G on the third have middle C on the lowest, with F on the fourth on the highest', () => {
    expect(lines('G3', 6)).toBe('C4 E4 G4 B4 D5 F5');
    expect(lines('F4', 6)).toBe('G2 B2 D3 F3 A3 C4');
  });

  it('of eight lines with F on the fourth reach G4', () => {
    expect(lines('F4', 8)).toBe('G2 B2 D3 F3 A3 C4 E4 G4');
  });
});

describe('what is no clef', () => {
  it.each(['H1', 'g2', 'C0', 'C9', 'C', 'C12', ''])('%s', (text) => {
    expect(clefOf(text)).toBeUndefined();
  });
});
