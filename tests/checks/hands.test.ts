/**
 * Hands and keys (common practice): a hand reaches an octave with ease and a ninth, rarely a tenth; it has five fingers. On a
 * short octave what counts is where keys lie: C to e is an octave of keys (Borys Medicky, keyboard layouts).
 */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { duet, messages, passage } from '../helpers/music';

const ON = 'instrument harpsichord compass g1-d6\n';
const SHORT = 'instrument virginals compass c2-c6 short-octave c/e\n';

const stretches = (dessus: string, basse: string, on = ON): string[] =>
  messages(duet(dessus, basse, 'C', on), 'hand-stretch').map((message) =>
    message.slice(0, message.indexOf(' is wider') - 1),
  );
/** "The left hand has a tenth to reach in bar 1, here f2 with a3". */
const tenths = (dessus: string, basse: string, on = ON): string[] => tenthsIn(duet(dessus, basse, 'C', on));
const tenthsIn = (of: Analysis): string[] =>
  messages(of, 'hand-tenth').map((message) => message.slice(0, message.indexOf(': easy')));
const counts = (dessus: string, basse: string): string[] => messages(duet(dessus, basse, 'C', ON), 'hand-full');

describe('two hands', () => {
  it('share any chord that some division makes easy', () => {
    expect(tenths('1 e5-c6', '1 c2-c3')).toEqual([]);
    // The middle notes go to whichever hand has room.
    expect(tenths('1 c4-c5', '1 c3-g3')).toEqual([]);
    expect(tenths('1 c4-e4-g4-c5', '1 c3-e3-g3-c4')).toEqual([]);
  });
  it('reach a ninth, and a tenth of hardly more keys: from a sharp to a white key', () => {
    expect(tenths('1 f5-c6', '1 f2-c3-g')).toEqual([]);
    expect(tenths('1 f5-c6', '1 bb2-f3-c4')).toEqual([]);
    expect(tenths('1 f5-c6', '1 c#2-g2-e3')).toEqual([]);
  });
  it('are told of a tenth, which fits some hands, and of what is wider, however it is shared', () => {
    expect(tenths('1 f5-c6', '1 f2-c3-a')).toEqual(['The left hand has a tenth to reach in bar 1, here f2 with a3']);
    expect(stretches('1 f5-c6', '1 f2-c3-a')).toEqual([]);
    expect(stretches('1 f5-c6', '1 c2-g2-f3')).toEqual(['Bar 1: c2 with f3 in the left hand, an eleventh']);
    expect(tenths('1 f5-c6', '1 c2-g2-f3')).toEqual([]);
  });
  it('are told of the tenths of a hand once a piece, with their bars', () => {
    expect(tenths('1 f5-c6 | f5-c6 | g5-d6 | e4-c5-g5', '1 f2-c3-a | f2-c3-a | 1 g2-d3-bb | c2')).toEqual([
      'The right hand has a tenth to reach in bar 4, here e4 with g5',
      'The left hand has a tenth to reach in bars 1-2, here f2 with a3',
    ]);
    const overTwoSystems = passage(
      'system upper C1 lower F4 meter C\n  dessus | 1 f5-c6 |\n  basse | 1 f2-c3-a |\nsystem\n  dessus | 1 c5 | f5-c6 |||\n  basse | 1 c3 | f2-c3-a |||\n',
      ON,
    );
    expect(tenthsIn(overTwoSystems)).toEqual(['The left hand has a tenth to reach in bars 1, 3, here f2 with a3']);
  });
  it('reach an eleventh where an arpeggio is signed, and while it is held', () => {
    expect(stretches('1 f5-c6', "1 c2-g2-f3'arp")).toEqual([]);
    expect(stretches('1 f5-c6', "1 c2-g2-a3'arp")).toHaveLength(1);
    expect(tenths('2 f5-c6 r', "2 f2-c3-a3'arp 2 r")).toEqual([]);
    const held = (sign: string) =>
      passage(
        `system upper C1 lower F4 meter C\n  dessus | 1 f5-c6 |||\n  taille | 2 r d3 |||\n  basse | 1 f2-c3-a${sign} |||\n`,
        ON,
      );
    expect(tenthsIn(held("'arp"))).toEqual([]);
    expect(tenthsIn(held(''))).toHaveLength(1);
  });
  it('hold what sounds on from before', () => {
    expect(tenths('1 f5-c6', '2. f2-c3 4 c3')).toEqual([]);
    const held = passage(
      'system upper C1 lower F4 meter C\n  dessus | 1 f5-c6 |||\n  taille | 2 r a3 |||\n  basse | 1 f2-c3 |||\n',
      ON,
    );
    expect(tenthsIn(held)).toEqual(['The left hand has a tenth to reach in bar 1, here f2 with a3']);
  });
  it('are not told of what one stroke after the other can do', () => {
    expect(tenths('1 f5-c6', '2 f2-c3 a3')).toEqual([]);
  });
  it('find a tenth on C an octave of keys where the octave is short, one on F not', () => {
    expect(tenths('1 f5-c6', '1 c2-g2-e3', SHORT)).toEqual([]);
    expect(tenths('1 f5-c6', '1 c2-g2-e3')).toHaveLength(1);
    expect(tenths('1 f5-c6', '1 f2-c3-a', SHORT)).toHaveLength(1);
    // C to g, a twelfth, is a minor tenth of keys; to a, an eleventh.
    expect(tenths('1 f5-c6', '1 c2-c3-g', SHORT)).toEqual([
      'The left hand has a tenth to reach in bar 1, here c2 with g3',
    ]);
    expect(stretches('1 f5-c6', '1 c2-c3-a', SHORT)).toEqual([
      'Bar 1: c2 with a3 in the left hand, a thirteenth, an eleventh on the keys',
    ]);
  });
  it('take one key once for two voices', () => {
    expect(counts('1 c5-d-e-f-g', '1 c2-e-g-c3-e')).toEqual([]);
    expect(counts('1 c5-d-e-f-g-a', '1 c2-e-g-c3-e')).toHaveLength(1);
  });
  it('leave the lowest note to a pedal', () => {
    const pedal = 'instrument organ compass c2-c6\n  manual great stops 8\n  manual pedal stops 16\n';
    expect(tenths('1 f5-c6', '1 f2-c3-a', pedal)).toEqual([]);
  });
  it('are nobody’s business where no instrument is named', () => {
    expect(tenths('1 f5-c6', '1 f2-c3-a', '')).toEqual([]);
  });
});

describe('one key for two voices', () => {
  const held = (dessus: string, taille: string, on = ON): string[] =>
    messages(
      passage(`system upper C1 lower F4 meter C\n  dessus | ${dessus} |||\n  taille | ${taille} |||\n`, on),
      'key-still-held',
    );
  it('is one stroke where both begin', () => {
    expect(held('2 g4 a', '1 g4')).toEqual([]);
  });
  it('is told where one strikes what the other holds', () => {
    expect(held('1 g4', '2 e4 g')).toEqual([
      'Bar 1: taille strikes g4, which dessus holds: the held note ends there, or is struck again.',
    ]);
    expect(held('1 g4', '2 e4 f')).toEqual([]);
    expect(held('2 g4 a', '2 e4 g')).toEqual([]);
  });
  it('is one key by whatever name, unless it is divided', () => {
    expect(held('1 eb4', '2 c4 d#')).toHaveLength(1);
    expect(held('1 eb4', '2 c4 d#', 'instrument virginals compass c2-c6 split d#/eb\n')).toEqual([]);
  });
  it('is two keys on two manuals', () => {
    const two = 'instrument harpsichord compass g1-d6\n  manual upper stops 8\n  manual lower stops 8 4\n';
    expect(held('(manual upper) 1 g4', '(manual lower) 2 e4 g', two)).toEqual([]);
    expect(held('(manual upper) 1 g4', '(manual upper) 2 e4 g', two)).toHaveLength(1);
  });
});
